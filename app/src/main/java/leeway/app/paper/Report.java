package leeway.app.paper;

import java.io.IOException;
import java.io.OutputStream;
import java.util.function.BooleanSupplier;
import leeway.app.report.Language;
import leeway.app.report.ReportPage;

/** The report of a plan on paper: what the page holds, unfolded, with the pictures drawn for the width of the paper. */
public final class Report {
    private Report() { }

    /** Writes the page's PDF. */
    public static void write(String page, Language language, OutputStream out) throws IOException { write(page, language, out, () -> false); }

    /** The same; stops with {@link leeway.core.run.Stopped} soon after it is told to be unwanted. */
    public static void write(String page, Language language, OutputStream out, BooleanSupplier unwanted) throws IOException { Paper.write(page, ReportPage.pictureRules(), language, out, unwanted); }
}

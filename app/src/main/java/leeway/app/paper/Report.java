package leeway.app.paper;

import java.io.IOException;
import java.io.OutputStream;
import leeway.app.report.Language;
import leeway.app.report.ReportPage;

/** The report of a plan on paper: what the page holds, unfolded, with the pictures drawn for the width of the paper. */
public final class Report {
    private Report() { }

    /** Writes the page's PDF. */
    public static void write(String page, Language language, OutputStream out) throws IOException { Paper.write(page, ReportPage.pictureRules(), language, out); }
}

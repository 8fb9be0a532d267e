package leeway.app.command;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;

/** A file that a command writes: whole or not at all. */
final class Output {
    /** Writes the contents. */
    interface Contents { void to(OutputStream out) throws IOException; }

    private Output() { }

    /** Writes into a folder that is made where it is missing; a message and false where that cannot be. */
    static boolean write(Command command, Path folder, String name, Contents contents) throws IOException {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            command.terminal.err().println("leeway: " + folder + " is a file; a folder is wanted, which is made where it is missing.");
            return false;
        }
        Path file = folder.resolve(name);
        if (Files.isDirectory(file)) {
            command.terminal.err().println("leeway: " + file + " is a folder; a file is wanted.");
            return false;
        }
        try {
            Files.createDirectories(folder);
            Path part = folder.resolve("." + name + "." + ProcessHandle.current().pid() + ".part");   // with the rights of any new file, not a temporary's
            try {
                try (OutputStream out = Files.newOutputStream(part)) {
                    contents.to(out);
                }
                Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (AccessDeniedException e) {
            command.terminal.err().println("leeway: nothing can be written into " + folder + "; look at its permissions.");
            return false;
        } catch (FileSystemException e) {
            String why = e.getReason() == null ? "" : " (" + e.getReason().toLowerCase(Locale.ROOT) + ")";
            command.terminal.err().println("leeway: " + file + " cannot be written" + why + ". Choose another folder.");
            return false;
        }
        return true;
    }
}

package leeway.app.command;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import leeway.app.report.Examples;
import leeway.app.report.Json;
import leeway.files.transport.NewFile;
import leeway.files.yaml.Nearest;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code leeway new FILE [--like EXAMPLE]}: writes a commented transport file to start from. */
@picocli.CommandLine.Command(headerHeading = "Example:  ", header = {"leeway new friday.yaml --like night-transfer", ""}, description = {"Writes a commented transport file to start from; never over an existing one."},
        customSynopsis = "leeway new FILE [--like EXAMPLE]")
final class NewCommand extends Command {
    @Parameters(arity = "1", paramLabel = "FILE", description = "the file to write")
    Path file;

    @Option(names = "--like", paramLabel = "EXAMPLE", description = "copies this example instead")
    String like;

    @Override public Integer call() throws IOException {
        String text = NewFile.text();
        if (like != null) {
            Optional<String> example = Examples.text(like);
            if (example.isEmpty()) {
                List<String> near = Nearest.of(Examples.plain(like), Examples.names());
                return refuse("there is no example \"" + leeway.app.command.Nearest.shortened(like) + "\". "
                        + (near.isEmpty() ? "Examples are " + String.join(", ", Examples.names()) + "." : "Did you mean " + leeway.app.command.Nearest.inWords(near) + "?"), near);
            }
            text = example.get();
        }
        Path target = file.toAbsolutePath();
        if (Files.exists(target)) return refuse(file + " exists already. Choose another name: nothing is written over.", List.of());
        if (!Files.isDirectory(target.getParent())) return refuse("there is no folder " + file.getParent() + ". Make it first.", List.of());
        Path half;
        try {
            half = Files.createTempFile(target.getParent(), ".leeway-new-", ".tmp");
        } catch (IOException e) {
            return refuse("the folder of " + file + " may not be written to. Choose another.", List.of());
        }
        try {
            Files.writeString(half, text);
            Files.createFile(target); // refuses where somebody was faster
            Files.move(half, target, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } catch (FileAlreadyExistsException e) {
            return refuse(file + " exists already. Choose another name: nothing is written over.", List.of());
        } finally {
            Files.deleteIfExists(half);
        }
        if (json()) {
            try (Json json = new Json(terminal.out())) {
                json.text("file", file.toString());
                json.text("like", Optional.ofNullable(like));
            }
        } else {
            terminal.out().println("wrote " + file + "; next: leeway plan " + (file.toString().contains(" ") ? "\"" + file + "\"" : file));
        }
        return DONE;
    }

    private int refuse(String message, List<String> near) {
        terminal.err().println("leeway new: " + message);
        if (json()) UsageJson.write(terminal.out(), message, near);
        return BAD_INPUT;
    }
}

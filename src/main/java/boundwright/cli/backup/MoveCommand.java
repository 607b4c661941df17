package boundwright.cli.backup;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.DataOptions;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.clip.keep.KeptFilms;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.store.engine.DataPlace;
import boundwright.store.engine.Move;
import boundwright.store.engine.PostgresAddress;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Copies a whole store into a PostgreSQL, or out of one. */
@Command(
    name = "move",
    description = {
      "Copies a whole data folder into a PostgreSQL, or a PostgreSQL into a new folder, and proves that both hold the same.",
      "Close boundwright first. The target must hold nothing; the source stays as it is.",
      "Example: boundwright move --from data --to jdbc:postgresql://host/club?user=coach%n"
    })
public final class MoveCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Option(names = "--from", paramLabel = "PLACE", required = true, description = "A data folder, or the address of a PostgreSQL.")
  private String from = "";

  @Option(names = "--to", paramLabel = "PLACE", required = true, description = "The address of a PostgreSQL, or a new data folder.")
  private String to = "";

  @Mixin private DataOptions data = new DataOptions();

  /** @param top the command above */
  public MoveCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** What {@code move --json} prints; described in {@code docs/formats-json.md}. */
  record Answer(String from, String to, int rows, int files, String everything) {}

  @Override
  public Integer call() throws IOException {
    Surroundings s = top.surroundings();
    DataPlace source = place(s, from, to);
    DataPlace target = place(s, to, from);
    Move move = new Move(source, target, s.clock());
    Move.Moved moved = move.run();
    String left = exported(s, source);
    String arrived = exported(s, target);
    if (!left.equals(arrived)) {
      throw new RefusedException(
          "The files of export --everything differ: something was written in " + source + " meanwhile. Do not use " + target + "; close every boundwright and move into an empty target.");
    }
    move.done();
    Answer a = new Answer(source.toString(), target.toString(), moved.rows(), moved.files(), arrived);
    if (top.json()) {
      Json.print(s.out(), a);
      return 0;
    }
    s.out().println(
        "Moved to " + a.to() + ": " + Notes.counted(a.rows(), "row") + (a.files() == 0 ? "" : ", " + Notes.counted(a.files(), "file") + " beside them")
            + ". Both places export the same, byte for byte (SHA-256 " + a.everything() + ").");
    s.out().println("Open the new one from now on; what is in " + a.from() + " is as it was.");
    return 0;
  }

  /** A folder by itself; of a PostgreSQL the films are in the other place's folder, or in the one that --data names. */
  private DataPlace place(Surroundings s, String text, String other) {
    if (!text.startsWith(PostgresAddress.BEGINS)) {
      // a folder whose own films are in it has no bucket; one that has none has them where --films-in says
      Path folder = s.path(text);
      boolean far = text.equals(from) && !KeptFilms.anyIn(folder);
      return DataPlace.of(folder).withFilms(far ? data.bucket(s) : null);
    }
    boolean beside = !data.folderNamed(s) && !other.startsWith(PostgresAddress.BEGINS);
    return new DataPlace(beside ? s.path(other) : data.folder(s), PostgresAddress.of(text, s.environment()), data.bucket(s));
  }

  private static String exported(Surroundings s, DataPlace place) throws IOException {
    MessageDigest digest;
    try {
      digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
    try (Workbench bench = Workbench.open(place, s.clock());
        Writer out = new OutputStreamWriter(new DigestOutputStream(OutputStream.nullOutputStream(), digest), StandardCharsets.UTF_8)) {
      EverythingFile.write(bench, out);
    }
    return HexFormat.of().formatHex(digest.digest());
  }
}

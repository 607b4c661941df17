package boundwright.clip.desk;

import boundwright.clip.learn.Taught;
import boundwright.clip.propose.ContactNet;
import boundwright.clip.propose.Proposer;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Weights of the contact network taught on this machine: a candidate, those in use, and those that older clips still name. Another
 * program may change them, so the folder is looked at each time; what was read is kept by its name, which is its checksum.
 */
public final class TaughtFiles {
  private static final String CANDIDATE = "candidate.weights";
  private static final String IN_USE = "in-use";
  private static final String ENDING = ".weights";
  private static final String FORGET = " The command `boundwright clip learn --forget` takes them away.";

  private final Path folder;
  private final Map<String, Proposer> known = new HashMap<>();

  /** The weights beside the clips of a data folder. */
  public TaughtFiles(Path clips) {
    folder = clips.resolve("learned");
  }

  /** Who reads a clip that nobody touched: the weights in use, or those of the program. */
  public Proposer now() {
    return named(inUse());
  }

  /** The name of the weights in use; empty for those of the program. */
  String inUse() {
    try {
      return Files.readString(folder.resolve(IN_USE), StandardCharsets.UTF_8).strip();
    } catch (IOException e) {
      if (Files.exists(folder.resolve(IN_USE))) {
        return "unreadable";
      }
      return "";
    }
  }

  /** Who reads with these weights. Where they are missing or damaged the program's own do, and every reading says so. */
  synchronized Proposer named(String sum) {
    if (sum.isEmpty()) {
      return Proposer.shipped();
    }
    Proposer kept = known.get(sum);
    if (kept == null || !Files.exists(file(sum))) {
      kept = load(sum);
      known.put(sum, kept);
    }
    return kept;
  }

  private Path file(String sum) {
    return folder.resolve((sum.matches("[0-9a-f]{64}") ? sum : "unknown") + ENDING);
  }

  private Proposer load(String sum) {
    try {
      Taught t = Taught.read(Files.readAllBytes(file(sum)));
      if (!t.sum().equals(sum)) {
        throw new IOException("its checksum is another");
      }
      return new Proposer(t.net(), "Feet as taught on this machine on " + t.day() + " (" + Notes.counted(t.clips().size(), "clip") + ").");
    } catch (IOException e) {
      String why = Files.exists(file(sum)) ? "cannot be used (" + e.getMessage() + ")" : "are not there any more";
      return new Proposer(
          ContactNet.shipped(), "The weights taught on this machine " + why + ": those that came with the program read this clip." + FORGET);
    }
  }

  /** The weights in use, or null for those of the program. */
  @Nullable Taught taken() {
    String sum = inUse();
    try {
      return sum.isEmpty() ? null : Taught.read(Files.readAllBytes(file(sum)));
    } catch (IOException e) {
      throw new RefusedException("The weights taught on this machine cannot be used (" + e.getMessage() + ")." + FORGET, e);
    }
  }

  void propose(Taught taught) {
    write(folder.resolve(CANDIDATE), taught.bytes());
  }

  Optional<Taught> candidate() {
    Path file = folder.resolve(CANDIDATE);
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    try {
      return Optional.of(Taught.read(Files.readAllBytes(file)));
    } catch (IOException e) {
      throw new RefusedException("The weights that were learned cannot be used (" + e.getMessage() + "). Learn again: boundwright clip learn", e);
    }
  }

  void take(Taught taught) {
    write(file(taught.sum()), taught.bytes());
    write(folder.resolve(IN_USE), taught.sum().getBytes(StandardCharsets.UTF_8));
    delete(folder.resolve(CANDIDATE));
  }

  /**
   * Back to the weights of the program.
   *
   * @param named weights that clips still name; their files stay
   * @return whether there was anything to forget
   */
  boolean forget(Set<String> named) {
    if (!Files.isDirectory(folder)) {
      return false;
    }
    boolean any = delete(folder.resolve(IN_USE));
    any |= delete(folder.resolve(CANDIDATE));
    try (Stream<Path> all = Files.list(folder)) {
      for (Path p : all.toList()) {
        String name = String.valueOf(p.getFileName());
        if (name.endsWith(ENDING) && !named.contains(name.substring(0, name.length() - ENDING.length()))) {
          any |= delete(p);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("the weights could not be listed", e);
    }
    return any;
  }

  private static boolean delete(Path file) {
    try {
      return Files.deleteIfExists(file);
    } catch (IOException e) {
      throw new UncheckedIOException("weights could not be deleted", e);
    }
  }

  static void write(Path file, byte[] bytes) {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    try {
      Path parent = file.getParent();
      if (parent != null) {
        Files.createDirectories(parent);
      }
      Files.write(part, bytes);
      Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw new UncheckedIOException("a file could not be written", e);
    }
  }
}

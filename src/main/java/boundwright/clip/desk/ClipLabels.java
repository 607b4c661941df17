package boundwright.clip.desk;

import boundwright.clip.FoundClip;
import boundwright.clip.learn.Label;
import boundwright.clip.learn.LabelBytes;
import boundwright.clip.propose.Proposer;
import boundwright.clip.reading.ClipReading;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Contacts that a coach agreed to, each in its clip's folder, so that they go when the clip goes; and which weights read a clip.
 *
 * <p>A clip that a hand touched (corrected, agreed to, logged) is read ever after with the weights that it was read with then, or
 * corrections would meet contacts that they were not made for. All others are read with the weights in use.
 */
final class ClipLabels {
  private final ClipFiles files;
  private final TaughtFiles taught;
  private final Clock clock;

  ClipLabels(ClipFiles files, TaughtFiles taught, Clock clock) {
    this.files = files;
    this.taught = taught;
    this.clock = clock;
  }

  private boolean touched(ClipRecord clip) {
    return !clip.corrections().isEmpty() || clip.repId() != 0 || agreed(clip.id());
  }

  /** Who says which foot stands in this clip. */
  Proposer reader(ClipRecord clip) {
    return touched(clip) ? taught.named(readBy(clip)) : taught.now();
  }

  /** The name of the weights that a clip keeps since a hand touched it; empty for those of the program, and for an untouched clip. */
  String readBy(ClipRecord clip) {
    Path file = files.readBy(clip.id());
    try {
      return touched(clip) && Files.exists(file) ? Files.readString(file, StandardCharsets.UTF_8).strip() : "";
    } catch (IOException e) {
      throw new UncheckedIOException("the name of a clip's weights could not be read", e);
    }
  }

  /** To be called before a hand changes a clip, with the clip as it was. */
  void touch(ClipRecord clip) {
    if (touched(clip)) {
      return;
    }
    String now = taught.inUse();
    if (now.isEmpty()) {
      files.drop(files.readBy(clip.id()));
    } else {
      TaughtFiles.write(files.readBy(clip.id()), now.getBytes(StandardCharsets.UTF_8));
    }
  }

  boolean agreed(long id) {
    return Files.exists(files.label(id));
  }

  /** Keeps what was agreed to, in place of what was before. */
  void keep(ClipRecord clip, FoundClip points, ClipReading reading) {
    Label label = Label.of(points, clip.setup().slowed(), clip.corrections(), reading, LocalDate.now(clock));
    if (label == null) {
      throw new RefusedException("The clip shows no touchdown, so there is nothing to agree to. Add its contacts by hand first.");
    }
    TaughtFiles.write(files.label(clip.id()), LabelBytes.of(label));
  }

  /** The agreement no longer holds. */
  void drop(long id) {
    files.drop(files.label(id));
  }

  /**
   * What was agreed to.
   *
   * @throws RefusedException if it is damaged
   */
  Optional<Label> of(long id) {
    return bytes(id).map(b -> LabelBytes.read(b, files.label(id).toString()));
  }

  /** The label's file. */
  Optional<byte[]> bytes(long id) {
    try {
      return agreed(id) ? Optional.of(Files.readAllBytes(files.label(id))) : Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException("agreed contacts could not be read", e);
    }
  }

  /** Whether a hand changed a contact of it; false where nothing was agreed or the label cannot be read. */
  boolean putRight(long id) {
    if (!agreed(id)) {
      return false;
    }
    try (InputStream in = Files.newInputStream(files.label(id))) {
      return LabelBytes.putRight(in);
    } catch (IOException e) {
      return false;
    }
  }
}

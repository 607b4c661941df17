package boundwright.clip.film;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;

/** Refusals that need no video code: the file itself. */
final class FilmFile {
  private static final String WAY_OUT = "Take the film straight from the phone's gallery, as MP4 or MOV, and try again.";

  private FilmFile() {}

  static String name(Path file) {
    Path name = file.getFileName();
    return name == null ? "the file" : name.toString();
  }

  /** Refuses what is not there, is no file, is empty or may not be read. */
  static void check(Path file) {
    String name = name(file);
    if (!Files.exists(file)) {
      throw new RefusedException("There is no film \"" + name + "\" at the place named. Check the name and the folder, and try again.");
    }
    if (!Files.isRegularFile(file)) {
      throw new RefusedException("\"" + name + "\" is not a file but a folder or a device. Name the film inside it.");
    }
    if (!Files.isReadable(file)) {
      throw new RefusedException("\"" + name + "\" may not be read by this program. Allow reading it, or copy it to a folder of yours.");
    }
    try {
      if (Files.size(file) == 0) {
        throw new RefusedException("\"" + name + "\" holds 0 bytes, so the copy never started. Copy the film from the phone again.");
      }
    } catch (IOException e) {
      throw new RefusedException("\"" + name + "\" cannot be read. Copy it to another folder and try again.", e);
    }
  }

  /** Why a file that is there could not be opened as a film. */
  static RefusedException unreadable(Path file) {
    if (startsLikeMp4(file)) {
      return new RefusedException("\"" + name(file) + "\" breaks off before its index, which says where each picture lies, or its index is "
          + "damaged; without it nothing can be read. The copy from the phone did not finish: copy the film again.");
    }
    return new RefusedException("\"" + name(file) + "\" is not a film, whatever its name ends in: there is no MP4, MOV, MKV, WebM, AVI or "
        + "MPEG transport stream inside. " + WAY_OUT);
  }

  /** First box of ISO/IEC 14496-12 or of its forerunner: four bytes of size, four of type. */
  private static boolean startsLikeMp4(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] head = in.readNBytes(8);
      return head.length == 8
          && Set.of("ftyp", "moov", "mdat", "wide", "free", "skip").contains(new String(head, 4, 4, StandardCharsets.ISO_8859_1));
    } catch (IOException e) {
      return false;
    }
  }
}

package boundwright.clip.bare;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Takes places, devices and names out of a film, whatever its ending says it is: MP4, MOV and 3GP (ISO 14496-12), Matroska and WebM (RFC 9559), AVI.
 * What tells of the pictures themselves stays: sizes, times, turns, and how many frames a second were filmed in slow motion.
 */
public final class BareFilm {
  private static final int HEAD = 12;
  /** Kinds of films that are known and cannot be made bare here: the first bytes in hexadecimal digits, and the name. */
  private static final List<List<String>> OTHERS =
      List.of(
          List.of("3026b275", "a Windows Media film"), List.of("000001ba", "an MPEG film"), List.of("000001b3", "an MPEG film"), List.of("464c5601", "a Flash film"),
          List.of("4f676753", "an Ogg film"));
  private static final List<String> ISO = List.of("ftyp", "moov", "mdat", "wide", "free", "skip", "pnot", "styp");
  private static final int PACKET = 188;

  private BareFilm() {}

  /**
   * Takes them out in place. A file that is none of the kinds of films that are known is left as it is: nothing that reads films here opens it.
   *
   * @param film the file
   * @param called how the coach knows it
   * @throws RefusedException if the film is damaged, or of a kind that cannot be made bare
   */
  public static void strip(Path film, String called) {
    try (FilmBytes bytes = new FilmBytes(film)) {
      if (bytes.size() < HEAD) {
        return;
      }
      String word = bytes.word(4);
      String first = String.format(Locale.ROOT, "%08x", bytes.number4(0));
      if (ISO.contains(word)) {
        new IsoFilm(bytes).strip();
      } else if (first.equals("1a45dfa3")) {
        new MatroskaFilm(bytes).strip();
      } else if (bytes.word(0).equals("RIFF") && bytes.word(8).equals("AVI ")) {
        new AviFilm(bytes).strip();
      } else {
        refuseOthers(bytes, first, called);
      }
    } catch (DamagedException e) {
      throw new RefusedException(
          "The film " + called + " is damaged (" + e.getMessage() + "), so what it says of places and devices cannot be taken out. Copy it from the phone again.", e);
    } catch (IOException e) {
      throw new UncheckedIOException("the film could not be made bare", e);
    }
  }

  private static void refuseOthers(FilmBytes bytes, String first, String called) throws IOException {
    for (List<String> other : OTHERS) {
      if (other.get(0).equals(first)) {
        throw refused(called, other.get(1));
      }
    }
    for (int lead : new int[] {0, 4}) { // packets of a transport stream, bare or with a time before each
      if (bytes.size() > lead + PACKET + lead + 1L) {
        ByteBuffer head = bytes.read(0, lead + PACKET + lead + 1);
        if (head.get(lead) == 0x47 && head.get(lead + PACKET + lead) == 0x47) {
          throw refused(called, "an MPEG transport stream");
        }
      }
    }
  }

  private static RefusedException refused(String called, String kind) {
    return new RefusedException(
        "The film " + called + " is " + kind + ", and what it may say of places and devices cannot be taken out of one. Save it as MP4, or film with the phone's own camera.");
  }
}

package boundwright.clip.real;

import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a film, in plain text beside it under the same name with {@code .txt}; docs/clip-accuracy.md has the format.
 *
 * @param slowed how many times slower the film plays than it was filmed
 * @param nobody whether nothing may be found in it
 * @param asked the card's sequence, or null
 * @param contacts in order
 * @param landing when both feet land [frames], NaN where they do not
 * @param ignored stretches of the film that are not judged
 */
public record TruthFile(
    double slowed, boolean nobody, @Nullable Sequence asked, List<Known> contacts, double landing, List<Stretch> ignored) {

  /**
   * A contact as seen.
   *
   * @param foot which
   * @param down touchdown [frames from the film's first, fractions allowed]; NaN where the film or the picture begins later
   * @param up toe-off [frames]; NaN where the film or the picture ends earlier
   */
  public record Known(Foot foot, double down, double up) {}

  /** From one frame to another, both included. */
  public record Stretch(double from, double to) {}

  /** Copies the lists. */
  public TruthFile {
    contacts = List.copyOf(contacts);
    ignored = List.copyOf(ignored);
  }

  /** The truth file of a film. */
  public static Path beside(Path film) {
    String name = film.getFileName().toString();
    return film.resolveSibling(name.substring(0, name.lastIndexOf('.')) + ".txt");
  }

  /**
   * Reads a truth file.
   *
   * @throws RefusedException naming the line that cannot be read
   */
  public static TruthFile read(Path file) throws IOException {
    double slowed = 1;
    boolean nobody = false;
    Sequence asked = null;
    double landing = Double.NaN;
    List<Known> contacts = new ArrayList<>();
    List<Stretch> ignored = new ArrayList<>();
    int number = 0;
    for (String line : Files.readAllLines(file)) {
      number++;
      String[] word = line.replaceFirst("#.*", "").strip().split("\\s+");
      try {
        switch (word[0]) {
          case "" -> {}
          case "slowed" -> slowed = Double.parseDouble(word[1]);
          case "nobody" -> nobody = true;
          case "asked" -> asked = Sequence.parse(String.join(" ", List.of(word).subList(1, word.length)));
          case "landing" -> landing = Double.parseDouble(word[1]);
          case "ignore" -> ignored.add(new Stretch(Double.parseDouble(word[1]), Double.parseDouble(word[2])));
          case "contact" -> contacts.add(new Known(foot(word[1]), frame(word[2]), frame(word[3])));
          default -> throw new IllegalArgumentException(word[0]);
        }
      } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
        throw new RefusedException(
            "Line " + number + " of " + file.getFileName() + " is not understood: \"" + line
                + "\". Lines are: slowed N, nobody, asked SEQUENCE, contact R|L TOUCHDOWN TOE-OFF (frames, - for not seen), landing FRAME, ignore FROM TO.",
            e);
      }
    }
    if (nobody == !contacts.isEmpty()) {
      throw new RefusedException(file.getFileName() + " must hold either contacts or the word nobody.");
    }
    return new TruthFile(slowed, nobody, asked, contacts, landing, ignored);
  }

  /** The same as text. */
  public String text(String remark) {
    StringBuilder out = new StringBuilder("# ").append(remark).append('\n');
    if (nobody) {
      return out.append("nobody\n").toString();
    }
    if (slowed != 1) {
      out.append(String.format(Locale.ROOT, "slowed %s%n", slowed));
    }
    if (asked != null) {
      out.append("asked ").append(asked.text()).append('\n');
    }
    for (Stretch s : ignored) {
      out.append(String.format(Locale.ROOT, "ignore %.2f %.2f%n", s.from, s.to));
    }
    for (Known k : contacts) {
      out.append("contact ").append(k.foot == Foot.RIGHT ? "R " : "L ").append(frame(k.down)).append(' ').append(frame(k.up)).append('\n');
    }
    if (!Double.isNaN(landing)) {
      out.append(String.format(Locale.ROOT, "landing %.2f%n", landing));
    }
    return out.toString();
  }

  private static Foot foot(String word) {
    return switch (word) {
      case "R" -> Foot.RIGHT;
      case "L" -> Foot.LEFT;
      default -> throw new IllegalArgumentException(word);
    };
  }

  private static double frame(String word) {
    return word.equals("-") ? Double.NaN : Double.parseDouble(word);
  }

  private static String frame(double f) {
    return Double.isNaN(f) ? "-" : String.format(Locale.ROOT, "%.2f", f);
  }
}

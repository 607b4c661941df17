package boundwright.picture;

import java.util.ArrayList;
import java.util.List;

/**
 * A line of words or a figure in a picture.
 *
 * @param x where it is anchored, drawing units
 * @param y its base line
 * @param size of the type, drawing units
 * @param anchor start, middle or end, as in SVG
 * @param style how it is set
 * @param said the words
 */
public record Lettering(double x, double y, double size, String anchor, Style style, String said) {
  /** How words are set. */
  public enum Style {
    /** Regular, ink. */
    PLAIN(400, false, "#1f1a17"),
    /** Regular, a quieter ink. */
    QUIET(400, false, "#574b41"),
    /** Bold, ink. */
    BOLD(700, false, "#1f1a17"),
    /** Bold, brick. */
    LOUD(700, false, "#a8452f"),
    /** A small word in spaced capitals. */
    CAPTION(400, true, "#1f1a17"),
    /** Bold, paper: on a dark ground. */
    ON_DARK(700, false, "#faf6ec");

    private final int weight;
    private final boolean spaced;
    private final String colour;

    Style(int weight, boolean spaced, String colour) {
      this.weight = weight;
      this.spaced = spaced;
      this.colour = colour;
    }

    /** Weight of the face. */
    public int weight() {
      return weight;
    }

    /** Space between letters, drawing units. */
    public double spacing() {
      return spaced ? 1.1 : 0;
    }

    /** Colour of the ink. */
    public String colour() {
      return colour;
    }
  }

  /** Advance widths of the house's face from the space to the tilde, thousandths of the type size; a test reads them in the font. */
  private static final int[] REGULAR = {
    200, 333, 384, 669, 623, 846, 690, 231, 308, 308, 480, 571, 225, 458, 211, 315, 641, 406, 544,
    570, 584, 534, 587, 502, 601, 586, 211, 219, 562, 551, 556, 418, 874, 709, 645, 646, 718, 621,
    564, 738, 796, 352, 331, 709, 553, 891, 792, 745, 596, 754, 658, 600, 585, 749, 693, 1024, 697,
    641, 617, 344, 320, 344, 546, 495, 309, 547, 579, 513, 593, 547, 348, 559, 622, 298, 271, 567,
    288, 954, 633, 575, 596, 578, 442, 478, 362, 620, 527, 800, 554, 529, 481, 341, 330, 341, 609
  };
  private static final int[] HEAVY = {
    180, 321, 434, 672, 607, 868, 672, 251, 316, 316, 456, 546, 244, 446, 233, 339, 635, 432, 563,
    576, 609, 547, 591, 538, 602, 591, 233, 239, 545, 533, 541, 448, 868, 713, 647, 632, 712, 609,
    562, 716, 787, 362, 342, 718, 558, 873, 772, 732, 610, 738, 667, 601, 612, 742, 709, 1021, 711,
    648, 623, 348, 351, 348, 544, 491, 346, 561, 589, 516, 604, 549, 374, 574, 633, 318, 291, 594,
    310, 954, 644, 577, 608, 590, 470, 493, 395, 632, 544, 833, 569, 556, 504, 361, 312, 361, 589
  };
  /** For letters that are not in the tables. */
  private static final int OTHER = 620;

  /** Width of the words as they are set, drawing units. */
  public double width() {
    return width(said, size, style);
  }

  /** Left end of the words. */
  public double left() {
    return switch (anchor) {
      case "end" -> x - width();
      case "middle" -> x - width() / 2;
      default -> x;
    };
  }

  /** Right end of the words. */
  public double right() {
    return left() + width();
  }

  public static double width(String text, double size, Style style) {
    int[] table = style.weight() == 700 ? HEAVY : REGULAR;
    double sum = 0;
    for (int i = 0; i < text.length(); i++) {
      int c = text.charAt(i) - ' ';
      sum += (c >= 0 && c < table.length ? table[c] : OTHER) * size / 1000 + style.spacing();
    }
    return sum;
  }

  /** Breaks words into lines of at most {@code width}; a word that is longer stands on a line of its own. */
  public static List<String> wrap(String text, double size, Style style, double width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ")) {
      if (line.length() > 0 && width(line + " " + word, size, style) > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.length() == 0 ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return List.copyOf(lines);
  }
}

package boundwright.store.movein;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.person.Sex;
import boundwright.footfall.Foot;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads single cells as coaches write them. */
final class Cells {
  private static final Pattern WHOLE = Pattern.compile("(\\d{1,3})( ?steps?)?");
  private static final Pattern WIND = Pattern.compile("([+-]?\\d{1,2}(?:[.,]\\d+)?)\\s*(?:m/s|w)?");
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[+-]?\\d*,\\d+");

  private Cells() {}

  /** A name, in which nothing unreadable stands. */
  static String name(String cell) {
    if (cell.isEmpty()) {
      throw new RefusedException("The name is empty. Write the name called at the track.");
    }
    return plain(cell);
  }

  /** A text in which nothing unreadable stands. */
  static String plain(String cell) {
    PlainText.checked(cell);
    if (cell.indexOf('\uFFFD') >= 0) {
      throw new RefusedException("'" + cell + "' has a character that could not be read. Choose how the file is to be read.");
    }
    return cell;
  }

  static Level level(String cell) {
    return switch (cell.toLowerCase(Locale.ROOT)) {
      case "", "-", "level not set" -> Level.NOT_SET;
      case "beginner", "b", "novice", "1" -> Level.BEGINNER;
      case "intermediate", "i", "2" -> Level.INTERMEDIATE;
      case "advanced", "a", "3" -> Level.ADVANCED;
      default -> throw new RefusedException("The level '" + cell + "' is not known. Write beginner, intermediate or advanced, or leave it empty.");
    };
  }

  static @Nullable Sex sex(String cell) {
    return switch (cell.toLowerCase(Locale.ROOT)) {
      case "", "-" -> null;
      case "f", "w", "female", "woman", "girl", "women", "girls" -> Sex.FEMALE;
      case "m", "male", "man", "boy", "men", "boys" -> Sex.MALE;
      default -> throw new RefusedException("The sex '" + cell + "' is not known. Write f or m, or leave it empty.");
    };
  }

  static @Nullable Foot leg(String cell) {
    return switch (cell.toLowerCase(Locale.ROOT)) {
      case "", "-" -> null;
      case "r", "right" -> Foot.RIGHT;
      case "l", "left" -> Foot.LEFT;
      default -> throw new RefusedException("The take-off leg '" + cell + "' is not known. Write R or L, or leave it empty.");
    };
  }

  static int steps(String cell) {
    String text = cell.toLowerCase(Locale.ROOT);
    if (text.isEmpty() || text.equals("standing")) {
      return 0;
    }
    var m = WHOLE.matcher(text);
    if (!m.matches()) {
      throw new RefusedException("The approach steps '" + cell + "' are not a whole number. Write 0 for standing, or the steps of the run-up, for example 4.");
    }
    return Athlete.checkSteps(Integer.parseInt(m.group(1)));
  }

  static @Nullable Double wind(String cell) {
    if (cell.isEmpty() || cell.equals("-") || cell.equalsIgnoreCase("nwi")) {
      return null;
    }
    var m = WIND.matcher(cell.toLowerCase(Locale.ROOT));
    if (!m.matches()) {
      throw new RefusedException("The wind '" + cell + "' is not a wind. Write metres a second, for example +1.2, or leave it empty.");
    }
    return Double.valueOf(m.group(1).replace(',', '.'));
  }

  /** A length in metres. */
  static double length(String what, String cell, LengthUnit unit) {
    return unit.read(what, cell);
  }

  /** A number with a comma for the point, with a point; anything else as it is. */
  static String point(String cell) {
    return DECIMAL_COMMA.matcher(cell).matches() ? cell.replace(',', '.') : cell;
  }
}

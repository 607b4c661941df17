package boundwright.cli;

import boundwright.clip.Box;
import boundwright.clip.reading.Setup;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.track.Spot;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads marks as they are written on the command line: picture points in pixels, an equals sign, metres. */
final class ClipMarks {
  private static final String NUMBER = "\\s*(-?\\d+(?:\\.\\d+)?)\\s*";
  private static final Pattern POINT = Pattern.compile(NUMBER + "," + NUMBER);
  private static final Pattern MARK = Pattern.compile(NUMBER + "," + NUMBER + "=" + NUMBER + "(?:@\\s*(\\d{1,7})\\s*)?");
  private static final Pattern CORNER = Pattern.compile(NUMBER + "," + NUMBER + "=" + NUMBER + "," + NUMBER);
  private static final Pattern BOX = Pattern.compile(NUMBER + "," + NUMBER + "," + NUMBER + "," + NUMBER);

  private ClipMarks() {}

  /** {@code "x1,y1=0;x2,y2=5@80"}: places along the runway; after {@code @} the film's frame, from 1, in which a mark was put. */
  static List<GroundMarks.Mark> ground(@Nullable String text) {
    List<GroundMarks.Mark> out = new ArrayList<>();
    for (String part : parts(text)) {
      Matcher m = match(MARK, part, "mark", "x,y=METRES, as in \"120,610=0;1150,606=5\"");
      out.add(new GroundMarks.Mark(new Spot(number(m, 1), number(m, 2)), number(m, 3), frame(m)));
    }
    return out;
  }

  /** {@code "x,y=along,up;..."}: known points of the athlete's upright plane. */
  static List<PlaneMap.Known> corners(@Nullable String text) {
    List<PlaneMap.Known> out = new ArrayList<>();
    for (String part : parts(text)) {
      Matcher m = match(CORNER, part, "corner", "x,y=ALONG,UP, as in \"180,820=0,0;910,810=8,0;912,632=8,2;190,636=0,2\"");
      out.add(new PlaneMap.Known(new Spot(number(m, 1), number(m, 2)), new Spot(number(m, 3), number(m, 4))));
    }
    return out;
  }

  /** {@code "x,y;x,y=2.0"}: foot, top and height of something upright. */
  static Setup.@Nullable Pole pole(@Nullable String text) {
    if (text == null) {
      return null;
    }
    List<String> two = parts(text);
    String form = "FOOT;TOP=METRES, as in \"640,600;642,455=2\"";
    if (two.size() != 2) {
      throw unknown("pole", text, form);
    }
    Matcher foot = match(POINT, two.get(0), "pole", form);
    Matcher top = match(MARK, two.get(1), "pole", form);
    return new Setup.Pole(new Spot(number(foot, 1), number(foot, 2)), new Spot(number(top, 1), number(top, 2)), number(top, 3), frame(top));
  }

  /** {@code "x,y,width,height"}. */
  static @Nullable Box box(@Nullable String text) {
    if (text == null) {
      return null;
    }
    Matcher m = match(BOX, text, "box", "x,y,WIDTH,HEIGHT in pixels, as in \"300,220,180,340\"");
    return new Box(number(m, 1), number(m, 2), number(m, 3), number(m, 4));
  }

  private static List<String> parts(@Nullable String text) {
    return text == null || text.isBlank() ? List.of() : Pattern.compile(";").splitAsStream(text).toList();
  }

  /** Number of the frame from 0; the first where none is given. */
  private static int frame(Matcher m) {
    String text = m.group(4);
    return text == null ? 0 : Math.max(1, Integer.parseInt(text)) - 1;
  }

  private static double number(Matcher m, int group) {
    return Double.parseDouble(m.group(group));
  }

  private static Matcher match(Pattern pattern, String part, String what, String form) {
    Matcher m = pattern.matcher(part);
    if (!m.matches()) {
      throw unknown(what, part, form);
    }
    return m;
  }

  private static RefusedException unknown(String what, String part, String form) {
    return new RefusedException("The " + what + " '" + part.strip() + "' is not understood. Write it as " + form + ".");
  }
}

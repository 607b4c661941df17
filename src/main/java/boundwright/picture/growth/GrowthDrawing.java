package boundwright.picture.growth;

import boundwright.athlete.growth.GrowthAnswer;
import boundwright.athlete.growth.GrowthTrend.Point;
import boundwright.athlete.growth.GrowthWords;
import boundwright.athlete.growth.Measurement;
import boundwright.picture.Lettering;
import boundwright.picture.Lettering.Style;
import boundwright.picture.StripPaths;
import boundwright.picture.growth.GrowthPicture.Dot;
import boundwright.picture.growth.GrowthPicture.Shape;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;

/** Lays out heights and speeds on one scale of days. */
public final class GrowthDrawing {
  private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM yyyy", Locale.ENGLISH);
  private static final String INK = "#1f1a17";
  private static final String BRICK = "#a8452f";
  private static final String SAND = "#efe3c8";
  private static final String HAIR = "#cdbf9f";
  private static final String NONE = "none";
  private static final double WIDTH = 320;
  private static final double LEFT = 8;
  private static final double RIGHT = WIDTH - 8;
  private static final double TYPE = 12;
  private static final double UPPER_TOP = 20;
  private static final double UPPER_BOTTOM = 132;
  private static final double LOWER_TOP = 164;
  private static final double LOWER_BOTTOM = 236;
  private static final double HEIGHT = LOWER_BOTTOM + 18;
  /** Least range of heights that is drawn [cm], so that an error of reading does not look like growth. */
  private static final double LEAST_CM = 4;

  private final GrowthAnswer answer;
  private final GrowthWords words;
  private final LocalDate first;
  private final double days;
  private final List<Shape> shapes = new ArrayList<>();
  private final List<Lettering> lettering = new ArrayList<>();

  private GrowthDrawing(GrowthAnswer answer, GrowthWords words) {
    if (answer.curve().isEmpty()) {
      throw new RefusedException("A picture of growth needs heights of at least 2 days. Enter another one first.");
    }
    this.answer = answer;
    this.words = words;
    this.first = answer.curve().get(0).date();
    this.days = ChronoUnit.DAYS.between(first, answer.curve().get(answer.curve().size() - 1).date());
  }

  /**
   * Draws what was answered.
   *
   * @param whose name
   * @throws RefusedException with heights of fewer than two days
   */
  public static GrowthPicture of(String whose, GrowthAnswer answer, GrowthWords words) {
    return new GrowthDrawing(answer, words).draw(whose);
  }

  private GrowthPicture draw(String whose) {
    List<Point> curve = answer.curve();
    double low = answer.measured().stream().mapToDouble(m -> 100 * m.height_m()).min().orElseThrow() - 1;
    double high = answer.measured().stream().mapToDouble(m -> 100 * m.height_m()).max().orElseThrow() + 1;
    low = Math.min(low, (low + high - LEAST_CM) / 2);
    high = Math.max(high, low + LEAST_CM);
    Scale heights = new Scale(low, high, UPPER_TOP, UPPER_BOTTOM - TYPE - 8);
    double most = Math.max(answer.settings().fast_cm_y() + 1, curve.stream().mapToDouble(p -> p.speed_cm_y().p95()).max().orElse(0));
    Scale speeds = new Scale(0, most, LOWER_TOP, LOWER_BOTTOM);
    rule(UPPER_BOTTOM);
    rule(LOWER_BOTTOM);
    band(curve, Point::height_cm, heights);
    band(curve, Point::speed_cm_y, speeds);
    double limit = speeds.at(answer.settings().fast_cm_y());
    shapes.add(new Shape("M" + n(LEFT) + " " + n(limit) + "H" + n(RIGHT), NONE, INK, 0.9, "3 2"));
    List<Dot> dots = answer.measured().stream().map(m -> new Dot(StripPaths.round(x(m.date())), StripPaths.round(heights.at(100 * m.height_m())))).toList();
    Measurement from = answer.measured().get(0);
    Measurement to = answer.measured().get(answer.measured().size() - 1);
    lettering.add(new Lettering(LEFT, 12, TYPE, "start", Style.CAPTION, "HEIGHT"));
    lettering.add(new Lettering(LEFT, UPPER_BOTTOM - 5, TYPE, "start", Style.QUIET, "from " + words.height(from.height_m())));
    lettering.add(new Lettering(RIGHT, 12, TYPE, "end", Style.BOLD, words.height(to.height_m())));
    lettering.add(new Lettering(LEFT, LOWER_TOP - 8, TYPE, "start", Style.CAPTION, "HOW FAST"));
    lettering.add(new Lettering(RIGHT, LOWER_TOP - 8, TYPE, "end", Style.QUIET, "dashed: fast from " + words.speed(answer.settings().fast_cm_y())));
    lettering.add(new Lettering(LEFT, HEIGHT - 4, TYPE, "start", Style.QUIET, MONTH.format(first)));
    lettering.add(new Lettering(RIGHT, HEIGHT - 4, TYPE, "end", Style.QUIET, MONTH.format(curve.get(curve.size() - 1).date())));
    String said =
        "From " + words.height(from.height_m()) + " on " + words.day().apply(from.date()) + " to " + words.height(to.height_m()) + " on "
            + words.day().apply(to.date()) + ". " + words.speed(answer);
    return new GrowthPicture(WIDTH, HEIGHT, "How " + whose + " grows", said, shapes, dots, lettering);
  }

  /** A value at the top and one at the bottom. */
  private record Scale(double low, double high, double top, double bottom) {
    double at(double value) {
      return bottom - (Math.max(low, Math.min(high, value)) - low) / (high - low) * (bottom - top);
    }
  }

  private double x(LocalDate day) {
    return LEFT + (RIGHT - LEFT) * ChronoUnit.DAYS.between(first, day) / days;
  }

  private void rule(double y) {
    shapes.add(new Shape("M" + n(LEFT) + " " + n(y) + "H" + n(RIGHT), NONE, HAIR, 0.8, NONE));
  }

  private void band(List<Point> curve, Function<Point, Estimate> what, Scale scale) {
    StringBuilder up = new StringBuilder("M");
    StringBuilder down = new StringBuilder();
    StringBuilder middle = new StringBuilder("M");
    for (Point p : curve) {
      String step = up.length() == 1 ? "" : "L";
      Estimate e = what.apply(p);
      String x = n(x(p.date()));
      up.append(step).append(x).append(' ').append(n(scale.at(e.p95())));
      down.insert(0, "L" + x + " " + n(scale.at(e.p05())));
      middle.append(step).append(x).append(' ').append(n(scale.at(e.p50())));
    }
    shapes.add(new Shape(up + down.toString() + "Z", SAND, NONE, 0, NONE));
    shapes.add(new Shape(middle.toString(), NONE, BRICK, 1.8, NONE));
  }

  private static String n(double x) {
    return StripPaths.number(x);
  }
}

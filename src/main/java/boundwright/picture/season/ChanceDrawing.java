package boundwright.picture.season;

import boundwright.picture.Lettering;
import boundwright.picture.Lettering.Style;
import boundwright.picture.season.SeasonPicture.Shape;
import boundwright.picture.season.SeasonPicture.What;
import boundwright.season.chance.Chances;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Draws how sure a plan is: the chance of each approach as parts of a bar, the load of the weeks as a band about its middle. */
public final class ChanceDrawing {
  private static final String INK = "#1f1a17";
  private static final String BRICK = "#a8452f";
  private static final String SAND = "#efe3c8";
  private static final String PAPER = "#faf6ec";
  private static final String NONE = "none";
  private static final double WIDTH = 320;
  private static final double TYPE = 12;
  private static final double ROW = 20;
  private static final double NAMES = 84;
  private static final double FIGURES = 40;
  private static final double HIGH = 64;

  private final List<Shape> shapes = new ArrayList<>();
  private final List<Lettering> words = new ArrayList<>();

  private ChanceDrawing() {}

  /**
   * Chance of each approach, one bar a family; the planned one is filled, each part says its steps.
   *
   * @param whose name
   * @param approaches by one main meet
   */
  public static SeasonPicture approaches(String whose, List<Chances.Approach> approaches) {
    ChanceDrawing d = new ChanceDrawing();
    StringBuilder said = new StringBuilder();
    for (int i = 0; i < approaches.size(); i++) {
      d.bar(approaches.get(i), ROW * i);
      said.append(said(approaches.get(i)));
    }
    return new SeasonPicture(WIDTH, ROW * approaches.size(), whose, said.toString().strip(), d.shapes, d.words);
  }

  private void bar(Chances.Approach a, double y) {
    double whole = WIDTH - NAMES - FIGURES;
    double x = NAMES;
    words.add(new Lettering(0, y + 14, TYPE, "start", Style.PLAIN, a.family().label()));
    for (Map.Entry<Integer, Double> e : new TreeMap<>(a.by()).descendingMap().entrySet()) {
      double width = whole * e.getValue();
      boolean planned = e.getKey() >= a.planned();
      shapes.add(new Shape(What.CHANCE, SeasonDrawing.box(x, y + 2, width, ROW - 5), planned ? INK : e.getKey() == a.planned() - 2 ? SAND : PAPER, INK, 0.8, NONE));
      String steps = String.valueOf(e.getKey());
      if (Lettering.width(steps, TYPE, Style.BOLD) + 4 < width) {
        words.add(new Lettering(x + width / 2, y + 14, TYPE, "middle", planned ? Style.ON_DARK : Style.BOLD, steps));
      }
      x += width;
    }
    words.add(new Lettering(WIDTH, y + 14, TYPE, "end", Style.BOLD, percent(a.atLeast(a.planned()))));
  }

  private static String percent(double chance) {
    return Math.round(100 * chance) + " %";
  }

  private static String said(Chances.Approach a) {
    StringBuilder out = new StringBuilder(a.family().label()).append(", planned ").append(a.planned()).append(" steps:");
    new TreeMap<>(a.by()).descendingMap().forEach((steps, chance) -> out.append(' ').append(steps).append(" steps ").append(percent(chance)).append(','));
    out.setCharAt(out.length() - 1, '.');
    return out.append(' ').toString();
  }

  /** The load of the weeks: a band that holds eight of ten seasons, its middle, and dashed the plan. */
  public static SeasonPicture load(String whose, List<Chances.Band> weeks) {
    ChanceDrawing d = new ChanceDrawing();
    double most = weeks.stream().mapToDouble(b -> Math.max(b.high(), b.planned())).max().orElse(1);
    double scale = (HIGH - TYPE - 4) / Math.max(1, most);
    int n = Math.max(2, weeks.size());
    StringBuilder up = new StringBuilder("M");
    StringBuilder down = new StringBuilder();
    StringBuilder middle = new StringBuilder("M");
    StringBuilder planned = new StringBuilder("M");
    for (int w = 0; w < weeks.size(); w++) {
      Chances.Band b = weeks.get(w);
      String x = SeasonDrawing.n(WIDTH * w / (n - 1));
      String step = w == 0 ? "" : "L";
      up.append(step).append(x).append(' ').append(SeasonDrawing.n(HIGH - 1 - scale * b.high()));
      down.insert(0, "L" + x + " " + SeasonDrawing.n(HIGH - 1 - scale * b.low()));
      middle.append(step).append(x).append(' ').append(SeasonDrawing.n(HIGH - 1 - scale * b.middle()));
      planned.append(step).append(x).append(' ').append(SeasonDrawing.n(HIGH - 1 - scale * b.planned()));
    }
    d.shapes.add(new Shape(What.BAND, up + down.toString() + "Z", SAND, NONE, 0, NONE));
    d.shapes.add(new Shape(What.WANTED, planned.toString(), NONE, INK, 0.9, "3 2"));
    d.shapes.add(new Shape(What.PLANNED, middle.toString(), NONE, BRICK, 1.6, NONE));
    d.shapes.add(new Shape(What.GROUND, "M0 " + SeasonDrawing.n(HIGH - 0.5) + "H" + SeasonDrawing.n(WIDTH), NONE, INK, 0.8, NONE));
    d.words.add(new Lettering(0, TYPE, TYPE, "start", Style.QUIET, "load, at most " + String.format(Locale.ROOT, "%,d", Math.round(most)) + " a week"));
    double sure = weeks.stream().mapToDouble(Chances.Band::middle).sum() / Math.max(1, weeks.stream().mapToDouble(Chances.Band::planned).sum());
    return new SeasonPicture(
        WIDTH, HIGH, whose + ", load", "Over the season the middle is " + percent(sure) + " of the plan.", d.shapes, d.words);
  }
}

package boundwright.picture.back;

import boundwright.footfall.Foot;
import boundwright.load.back.BackDates;
import boundwright.load.back.Stages;
import boundwright.picture.Lettering.Style;
import boundwright.picture.Lettering;
import boundwright.picture.StripPaths;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.readiness.back.BackLook;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The stages of a way back as columns up to the former week, the one it stands in marked with the day since when. Columns of a right leg
 * are filled, those of a left leg outlined; stages to come are thin. Units are those of the drawing, y downwards.
 *
 * @param width of the drawing
 * @param height of the drawing
 * @param form wide for desk and paper, narrow for a phone
 * @param title what the picture is, in a line
 * @param said what can be read from it, in sentences
 * @param filled whether columns of stages that are over are filled
 * @param bars one for each stage and one for the former week
 * @param words everything written
 */
public record BackPicture(
    double width, double height, Width form, String title, String said, boolean filled, List<Bar> bars, List<Lettering> words) {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
  private static final double TOP = 40;
  private static final double HIGH = 120;
  private static final double SIZE = 12;

  /** Takes copies. */
  public BackPicture {
    bars = List.copyOf(bars);
    words = List.copyOf(words);
  }

  /** What a column is. */
  public enum When {
    /** Over. */
    OVER,
    /** Where it stands. */
    NOW,
    /** To come. */
    TO_COME
  }

  /** A column. */
  public record Bar(double x, double y, double width, double height, When when) {}

  /** {@link #width} as written in the drawing. */
  public String widthText() {
    return StripPaths.number(width);
  }

  /** {@link #height} as written in the drawing. */
  public String heightText() {
    return StripPaths.number(height);
  }

  /** Draws one. */
  public static BackPicture of(BackLook look, Width form) {
    Stages s = look.way().stages();
    int stage = Math.min(look.state().stage(), s.count());
    double width = form.units();
    double each = (width - 8) / (s.count() + 1);
    double ground = TOP + HIGH;
    List<Bar> bars = new ArrayList<>();
    for (int k = 0; k <= s.count(); k++) {
      double high = HIGH * s.share(k);
      When when = k < stage ? When.OVER : k == stage ? When.NOW : When.TO_COME;
      bars.add(new Bar(round(4 + k * each + 0.12 * each), round(ground - high), round(0.76 * each), round(high), when));
    }
    List<Lettering> words = new ArrayList<>();
    words.add(new Lettering(0, 9, SIZE, "start", Style.CAPTION, (look.way().leg().label() + " leg, share of its former week").toUpperCase(Locale.ROOT)));
    above(words, bars, stage, percent(s.share(stage)) + (stage == s.count() ? "" : " now"), Style.LOUD, width);
    if (stage < s.count()) {
      above(words, bars, s.count(), "100 %", Style.PLAIN, width);
    }
    below(words, bars.get(stage), DAY.format(look.leg().since()), ground, width);
    return new BackPicture(
        width, ground + 24, form, look.way().leg().label() + " leg on its way back: stage " + Math.min(stage + 1, s.count()) + " of " + s.count(), said(look, s, stage),
        look.way().leg() == Foot.RIGHT, bars, words);
  }

  /** Over its column and clear of those beside it; left out where other words stand there. */
  private static void above(List<Lettering> words, List<Bar> bars, int of, String said, Style style, double width) {
    Bar bar = bars.get(of);
    double half = Lettering.width(said, SIZE, style) / 2;
    double x = Math.max(half, Math.min(width - half, bar.x() + bar.width() / 2));
    double y = bars.stream().filter(b -> b.x() < x + half + 2 && x - half - 2 < b.x() + b.width()).mapToDouble(Bar::y).min().orElse(bar.y()) - 5;
    boolean clear = words.stream().skip(1).noneMatch(w -> w.left() < x + half + 3 && x - half < w.right() + 3 && Math.abs(w.y() - y) < 12);
    if (clear) {
      words.add(new Lettering(round(x), round(y), SIZE, "middle", style, said));
    }
  }

  private static void below(List<Lettering> words, Bar bar, String said, double ground, double width) {
    double half = Lettering.width(said, SIZE, Style.PLAIN) / 2;
    words.add(new Lettering(round(Math.max(half, Math.min(width - half, bar.x() + bar.width() / 2))), round(ground + 16), SIZE, "middle", Style.PLAIN, said));
  }

  private static String said(BackLook look, Stages s, int stage) {
    StringBuilder out = new StringBuilder();
    for (int k = 0; k <= s.count(); k++) {
      out.append(k == s.count() ? "Former week: " : "Stage " + (k + 1) + ": ").append(percent(s.share(k))).append(k == stage ? ", now, since " + look.leg().since() : "").append(". ");
    }
    BackDates dates = look.dates();
    if (dates != null) {
      out.append("Former week between ").append(dates.from()).append(" and ").append(dates.to()).append(" in eight of ten simulated ways.");
    }
    return out.toString().strip();
  }

  private static String percent(double share) {
    return Math.round(100 * share) + " %";
  }

  private static double round(double x) {
    return Math.round(10 * x) / 10.0;
  }
}

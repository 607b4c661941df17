package boundwright.picture;

import static boundwright.picture.StripPaths.number;
import static boundwright.picture.StripPaths.round;

import boundwright.footfall.Foot;
import boundwright.picture.Lettering.Style;
import boundwright.picture.TestPicture.Band;
import boundwright.picture.TestPicture.Dot;
import boundwright.picture.TestPicture.Grid;
import boundwright.picture.TestPicture.Trend;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.readiness.TestError;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestScore;
import boundwright.readiness.TestTrend;
import boundwright.readiness.TrendLine;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Lays out the scores of one test on a scale of days and a scale of lengths or speeds. */
final class TestDrawing {
  private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM yyyy", Locale.ENGLISH);
  private static final double HIGH = 150;
  private static final double SIZE = 12;
  /** How far the picture of days goes on beyond the first and the last score. */
  private static final double EDGE = 16;

  private final List<TestScore> scores;
  private final TestScore latest;
  private final List<TestScore> compared;
  private final @Nullable TestError error;
  private final @Nullable TestTrend trend;
  private final @Nullable TrendLine own;
  private final TestKind kind;
  private final LengthUnit unit;
  private final Width form;
  private final boolean plain;
  private final boolean wide;
  private final double left;
  private final double right;
  private double low;
  private double scale;
  private double ground;

  private final List<Lettering> words = new ArrayList<>();
  private final List<Grid> grid = new ArrayList<>();

  TestDrawing(List<TestScore> scores, @Nullable TestError error, @Nullable TestTrend trend, LengthUnit unit, Width form, boolean plain) {
    if (scores.isEmpty()) {
      throw new RefusedException("A picture of a test needs at least 1 score, and there are 0. Enter one first.");
    }
    this.scores = scores.stream().sorted(Comparator.comparing(TestScore::date).thenComparing(TestScore::id)).toList();
    latest = this.scores.get(this.scores.size() - 1);
    compared = this.scores.stream().filter(s -> s.comparableWith(latest)).toList();
    kind = latest.kind();
    this.error = error;
    this.trend = trend;
    own = trend == null ? null : trend.model().athletes().stream().filter(l -> l.athlete() == latest.athleteId()).findFirst().orElse(null);
    this.unit = unit;
    this.form = form;
    this.plain = plain;
    wide = form == Width.WIDE;
    left = unit == LengthUnit.FEET_INCHES && kind.unit() == TestKind.Unit.METRES ? 54 : wide ? 40 : 48;
    right = form.units() - 6;
  }

  TestPicture draw() {
    words.add(new Lettering(0, 9, wide ? 9 : 12, "start", Style.CAPTION, name().toUpperCase(Locale.ROOT)));
    double beside = Lettering.width(write(latest.value()), wide ? 24 : 22, Style.BOLD) + 12;
    List<String> verdict = Lettering.wrap(verdict(), SIZE, Style.PLAIN, form.units() - beside);
    double y = verdict.size() > 1 ? 41 : 36;
    words.add(new Lettering(0, y, wide ? 24 : 22, "start", Style.BOLD, write(latest.value())));
    for (int i = 0; i < verdict.size(); i++) {
      words.add(new Lettering(round(beside), y - (verdict.size() > 1 ? 14 : 0) + 14 * i, SIZE, "start", Style.PLAIN, verdict.get(i)));
    }
    double top = y + 14 * Math.max(0, verdict.size() - 2) + 26;
    ground = top + HIGH;
    range();
    scaleLines();
    days();
    List<Dot> dots = scores.stream().map(this::dot).toList();
    figures(dots);
    double bottom = ground + 26;
    for (String line : Lettering.wrap(key(), SIZE, Style.QUIET, form.units())) {
      bottom += 15;
      words.add(new Lettering(0, round(bottom), SIZE, "start", Style.QUIET, line));
    }
    Foot leg = kind.leg().orElse(Foot.RIGHT);
    return new TestPicture(
        form.units(), round(bottom + 8), form, title(), said(), leg == Foot.RIGHT, grid, band(), trendPath(), dots, words);
  }

  // ---- scales ----

  private void range() {
    double least = scores.stream().mapToDouble(TestScore::value).min().orElse(0);
    double most = scores.stream().mapToDouble(TestScore::value).max().orElse(1);
    TestError e = error;
    if (e != null) {
      least = Math.min(least - e.te(), compared.get(0).value() - e.detectableChange());
      most = Math.max(most + e.te(), compared.get(0).value() + e.detectableChange());
    }
    TrendLine line = own;
    if (line != null && trend != null) {
      for (LocalDate day : List.of(scores.get(0).date(), latest.date())) {
        Estimate at = line.at(trend.weeksTo(day));
        least = Math.min(least, at.p05());
        most = Math.max(most, at.p95());
      }
    }
    double room = Math.max(0.1 * (most - least), 0.05);
    low = least - room;
    scale = HIGH / (most + room - low);
  }

  private double y(double value) {
    return ground - scale * (value - low);
  }

  private double x(LocalDate day) {
    long all = ChronoUnit.DAYS.between(scores.get(0).date(), latest.date());
    if (all == 0) {
      return (left + right) / 2;
    }
    long at = ChronoUnit.DAYS.between(scores.get(0).date(), day);
    return left + EDGE + (right - left - 2 * EDGE - 14) * at / all;
  }

  private boolean inFeet() {
    return unit == LengthUnit.FEET_INCHES && kind.unit() == TestKind.Unit.METRES;
  }

  private void scaleLines() {
    double one = inFeet() ? LengthUnit.FOOT_M : 1;
    double step = one * (inFeet() ? feetStep(HIGH / scale / one) : step(HIGH / scale));
    double high = low + HIGH / scale;
    for (long k = (long) Math.ceil(low / step); k * step <= high; k++) {
      double v = k * step;
      grid.add(new Grid(left, right, round(y(v)), false));
      words.add(new Lettering(left - 5, round(y(v) + 3.5), wide ? 9.5 : 12, "end", Style.QUIET, tick(v, step)));
    }
    grid.add(new Grid(left, right, round(ground), true));
  }

  /** 1, 2 or 5 times a power of ten, so that three to six lines are drawn. */
  private static double step(double range) {
    double power = Math.pow(10, Math.floor(Math.log10(range / 5)));
    for (double s : new double[] {1, 2, 5}) {
      if (range / (s * power) <= 5.5) {
        return s * power;
      }
    }
    return 10 * power;
  }

  private static double feetStep(double range) {
    for (double s : new double[] {0.25, 0.5, 1, 2, 5}) {
      if (range / s <= 5.5) {
        return s;
      }
    }
    return 10;
  }

  private String tick(double value, double step) {
    if (inFeet()) {
      String text = unit.write(value);
      return step >= 0.99 * LengthUnit.FOOT_M ? text.replace(" 0 in", "") : text;
    }
    int digits = Math.max(0, (int) Math.ceil(-Math.log10(step) - 1e-9));
    return String.format(Locale.ROOT, "%." + digits + "f", value) + " " + kind.unit().sign();
  }

  private void days() {
    boolean months = ChronoUnit.DAYS.between(scores.get(0).date(), latest.date()) > 330;
    DateTimeFormatter form = months ? MONTH : LoadDrawing.DAY;
    double taken = Double.POSITIVE_INFINITY;
    for (int i = scores.size() - 1; i >= 0; i--) {
      double at = x(scores.get(i).date());
      String day = form.format(scores.get(i).date());
      double half = Lettering.width(day, SIZE, Style.PLAIN) / 2;
      if (at + half < taken) {
        words.add(new Lettering(round(at), round(ground + 16), SIZE, "middle", Style.PLAIN, day));
        taken = at - half - 8;
      }
    }
  }

  // ---- what is drawn ----

  private Dot dot(TestScore s) {
    boolean same = s.comparableWith(latest);
    double x = x(s.date());
    TestError e = error;
    String whisker = "";
    if (same && e != null && !plain) {
      String ends = "M" + number(x - 3) + " ";
      whisker =
          ends + number(y(s.value() + e.te())) + "h6M" + number(x) + " " + number(y(s.value() + e.te())) + "V" + number(y(s.value() - e.te())) + ends
              + number(y(s.value() - e.te())) + "h6";
    }
    return new Dot(s.date(), s.value(), same, round(x), round(y(s.value())), whisker);
  }

  /** Scores written beside their dots, the newest first, as long as there is room. */
  private void figures(List<Dot> dots) {
    List<Lettering> kept = new ArrayList<>();
    for (int i = dots.size() - 1; i >= 0; i--) {
      Dot d = dots.get(i);
      boolean newest = i == dots.size() - 1;
      double beside = belowTrend(d) ? 13 : -5;
      Lettering f =
          new Lettering(d.x() + 7, round(d.y() + beside), newest || !wide ? 12 : 10, "start", newest ? Style.BOLD : Style.PLAIN, figure(d.value()));
      if (f.right() > right) {
        f = new Lettering(d.x() - 7, f.y(), f.size(), "end", f.style(), f.said());
      }
      Lettering set = f;
      if (kept.stream().noneMatch(k -> set.left() < k.right() + 3 && k.left() < set.right() + 3 && Math.abs(set.y() - k.y()) < 12)) {
        kept.add(set);
      }
    }
    words.addAll(kept);
  }

  /** A figure stands on the side of the dot that is away from the line. */
  private boolean belowTrend(Dot d) {
    TrendLine line = own;
    TestTrend t = trend;
    return line != null && t != null && d.value() < line.at(t.weeksTo(d.date())).p50();
  }

  private @Nullable Band band() {
    TestError e = error;
    if (e == null) {
      return null;
    }
    TestScore first = compared.get(0);
    double from = Math.max(left, x(first.date()) - EDGE);
    double top = y(first.value() + e.detectableChange());
    return new Band(round(from), round(top), round(right - from), round(2 * scale * e.detectableChange()));
  }

  private @Nullable Trend trendPath() {
    TrendLine line = own;
    TestTrend t = trend;
    long days = ChronoUnit.DAYS.between(scores.get(0).date(), latest.date());
    if (line == null || t == null || days == 0) {
      return null;
    }
    StringBuilder middle = new StringBuilder();
    StringBuilder upper = new StringBuilder();
    StringBuilder lower = new StringBuilder();
    int pieces = 24;
    for (int i = 0; i <= pieces; i++) {
      LocalDate day = scores.get(0).date().plusDays(Math.round(days * i / (double) pieces));
      Estimate at = line.at(t.weeksTo(day));
      String to = (i == 0 ? "M" : "L") + number(x(day)) + " ";
      middle.append(to).append(number(y(at.p50())));
      upper.append(to).append(number(y(at.p95())));
      lower.append(to).append(number(y(at.p05())));
    }
    return new Trend(middle.toString(), upper.append(lower).toString());
  }

  // ---- in words ----

  private String name() {
    String label = plain ? kind.plain() : kind.label();
    return kind.fromStanding() ? label : label + ", " + RungInk.name(latest.approachSteps());
  }

  private String write(double value) {
    return kind.unit() == TestKind.Unit.METRES ? unit.write(value) : String.format(Locale.ROOT, "%.2f %s", value, kind.unit().sign());
  }

  private String spread(double value) {
    return kind.unit() == TestKind.Unit.METRES ? unit.writeSpread(value) : String.format(Locale.ROOT, "± %.2f %s", value, kind.unit().sign());
  }

  private String figure(double value) {
    String text = write(value);
    return inFeet() ? text : text.substring(0, text.indexOf(' '));
  }

  private String verdict() {
    String on = "on " + LoadDrawing.DAY.format(latest.date()) + " " + latest.date().getYear();
    if (compared.size() < 2) {
      return on + ", the first of its history.";
    }
    double change = latest.value() - compared.get(0).value();
    String first = LoadDrawing.DAY.format(compared.get(0).date()) + " " + compared.get(0).date().getYear();
    String by = by(change) + (plain ? " on " : " the first, of ") + first;
    TestError e = error;
    if (plain) {
      return on + ": " + by + (e == null
          ? "; how exact this test is here is not known yet."
          : Math.abs(change) > e.detectableChange() ? ", and more than the test can miss by." : ", within what the test can miss by: no change can be told.");
    }
    if (e == null) {
      return on + ": " + by + "; the error of the test is not known, so nothing can be told.";
    }
    return on + ": " + by + (Math.abs(change) > e.detectableChange()
        ? ", more than the error of the test explains."
        : ", within the error of the test.");
  }

  /** A change that its figure does not show is none. */
  private String by(double change) {
    String size = write(Math.abs(change));
    if (size.equals(write(0))) {
      return "the same as";
    }
    return size + (plain ? (change < 0 ? " less than" : " more than") : change < 0 ? " below" : " above");
  }

  private String key() {
    StringBuilder out = new StringBuilder();
    TestError e = error;
    if (plain) {
      out.append(e == null ? "" : "Shaded: so much the test can miss by, " + spread(e.detectableChange()) + " about the first. ");
    } else if (e != null) {
      out.append("Strokes at the dots: typical error, ").append(spread(e.te())).append(". Band: what the error explains of a change from the first, ")
          .append(spread(e.detectableChange())).append(". ");
    } else {
      out.append("The error of the test is not known: repeat it with the squad. ");
    }
    if (own != null && scores.size() > 1) {
      out.append("Slanting line: trend within the squad; dashed: nine in ten. ");
    }
    if (compared.size() < scores.size()) {
      out.append(plain ? "Cross: done in another way, not compared. " : "Cross: done by another protocol, not compared. ");
    }
    return out.toString().strip();
  }

  private String title() {
    return name() + ": " + Notes.counted(scores.size(), "score") + ", the latest " + write(latest.value());
  }

  private String said() {
    StringBuilder out = new StringBuilder("Latest ").append(write(latest.value())).append(' ').append(verdict()).append(' ');
    for (TestScore s : scores) {
      out.append(LoadDrawing.DAY.format(s.date())).append(' ').append(s.date().getYear()).append(": ").append(write(s.value()))
          .append(s.comparableWith(latest) ? ". " : plain ? ", done in another way. " : ", by another protocol. ");
    }
    return out.append(key()).toString();
  }
}

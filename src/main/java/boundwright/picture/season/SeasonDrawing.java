package boundwright.picture.season;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.picture.Lettering;
import boundwright.picture.Lettering.Style;
import boundwright.picture.season.SeasonPicture.Shape;
import boundwright.picture.season.SeasonPicture.Size;
import boundwright.picture.season.SeasonPicture.What;
import boundwright.season.Climb;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.sheet.SeasonOverview;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Draws the head and the rows of a season's table on one scale. */
public final class SeasonDrawing {
  private static final String INK = "#1f1a17";
  private static final String BRICK = "#a8452f";
  private static final String SAND = "#efe3c8";
  private static final String PAPER = "#faf6ec";
  private static final String LINE = "#cdbf9f";
  private static final String NONE = "none";
  private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM", Locale.ENGLISH);
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);

  private final SeasonOverview season;
  private final Size size;
  private final List<Shape> shapes = new ArrayList<>();
  private final List<Lettering> words = new ArrayList<>();

  private SeasonDrawing(SeasonOverview season, Size size) {
    this.season = season;
    this.size = size;
  }

  /** The head: months, the Mondays, meets by their numbers. */
  public static SeasonPicture head(SeasonOverview season, Size size) {
    return new SeasonDrawing(season, size).head();
  }

  /** An athlete's row. */
  public static SeasonPicture row(SeasonOverview season, SeasonOverview.Row row, Size size) {
    return new SeasonDrawing(season, size).row(row);
  }

  /** Where the day it is looked at stands in the drawing, 0 before the season begins. */
  public static double todayX(SeasonOverview season, Size size) {
    return Math.max(0, new SeasonDrawing(season, size).x(season.today()));
  }

  private SeasonPicture head() {
    double type = size.type();
    double height = 3.9 * type;
    int month = 0;
    for (int w = 0; w < season.weeks(); w++) {
      LocalDate first = season.first().plusWeeks(w);
      if (first.getMonthValue() != month) {
        month = first.getMonthValue();
        shape(What.RULE, "M" + n(size.week() * w) + " 0V" + n(height), NONE, LINE, 0.8, NONE);
        Lettering name = new Lettering(size.week() * w + 2, type, type, "start", Style.BOLD, MONTH.format(first));
        // a month of which one week is in the season has no room for its name
        words.removeIf(earlier -> earlier.y() == name.y() && earlier.right() + 2 > name.left());
        words.add(name);
      }
      if (w % every() == 0) {
        words.add(new Lettering(size.week() * w + 2, 2.15 * type, size.small(), "start", Style.QUIET, String.valueOf(first.getDayOfMonth())));
      }
    }
    int number = 1;
    for (Meet m : season.meets()) {
      double x = x(m.date());
      flag(x, height, height - 2.4 * type, 0.75 * type, false);
      words.add(new Lettering(x + 0.95 * type, height - 0.3 * type, size.small(), "start", Style.BOLD, String.valueOf(number++)));
    }
    today(height);
    StringBuilder said = new StringBuilder("Weeks from ").append(DAY.format(season.first())).append(" to ").append(DAY.format(season.last())).append('.');
    season.meets().forEach(m -> said.append(' ').append(m.name()).append(' ').append(DAY.format(m.date())).append('.'));
    return new SeasonPicture(width(), height, season.name(), said.toString(), shapes, words);
  }

  private int every() {
    return size.week() >= 1.4 * size.small() ? 1 : 2;
  }

  private SeasonPicture row(SeasonOverview.Row row) {
    double type = size.type();
    double ground = size.row() - 0.55 * type;
    double top = 1.25 * type;
    double scale = (ground - top) / row.most();
    for (int w = 0; w < row.weeks().size(); w++) {
      SeasonOverview.Week week = row.weeks().get(w);
      double x = size.week() * w;
      if (week.lighter()) {
        shape(What.LIGHTER, box(x + 0.5, top, size.week() - 1, ground - top), SAND, LINE, 0.6, "2 2");
      }
      bar(week, Foot.LEFT, x + 0.18 * size.week(), ground, scale);
      bar(week, Foot.RIGHT, x + 0.54 * size.week(), ground, scale);
      double wanted = ground - Math.min(ground - top, scale * week.wanted() / 2);
      shape(What.WANTED, "M" + n(x + 1) + " " + n(wanted) + "H" + n(x + size.week() - 1), NONE, BRICK, 0.9, "2 1.5");
      if (week.test()) {
        double side = 0.4 * type;
        shape(What.TEST, box(x + size.week() / 2 - side / 2, ground + 0.1 * type, side, side), PAPER, INK, 0.8, NONE);
      }
    }
    shape(What.GROUND, "M0 " + n(ground) + "H" + n(width()), NONE, INK, 0.8, NONE);
    steps(row, top);
    for (SeasonOverview.Jumps j : row.jumps()) {
      flag(x(j.meet().date()), ground, ground - 0.2 * type, 0.8 * type, j.importance() == Entry.Importance.MAIN);
    }
    today(size.row());
    return new SeasonPicture(width(), size.row(), row.athlete(), said(row), shapes, words);
  }

  private void bar(SeasonOverview.Week week, Foot foot, double x, double ground, double scale) {
    double width = 0.28 * size.week();
    double height = scale * week.planned().units(foot);
    if (height > 0) {
      shape(What.PLANNED, box(x, ground - height, width, height), foot == Foot.RIGHT ? INK : PAPER, INK, 0.8, NONE);
    }
    week.done()
        .filter(d -> d.units(foot) > 0)
        .ifPresent(
            d -> {
              double at = ground - scale * d.units(foot);
              double r = Math.min(2.2, 0.1 * size.week());
              String dot = "M" + n(x + width / 2 - r) + " " + n(at) + "a" + n(r) + " " + n(r) + " 0 1 0 " + n(2 * r) + " 0a" + n(r) + " " + n(r) + " 0 1 0 " + n(-2 * r) + " 0Z";
              shape(What.DONE, dot, foot == Foot.RIGHT ? BRICK : PAPER, BRICK, 1.1, NONE);
            });
  }

  /** The steps stand where they begin; a decision day is a diamond. */
  private void steps(SeasonOverview.Row row, double top) {
    double type = size.type();
    double free = 0;
    for (Climb.Stage s : row.stages()) {
      if (!s.from().isAfter(season.last())) {
        double x = x(s.from().isBefore(season.first()) ? season.first() : s.from());
        Lettering said = new Lettering(Math.max(x + 1, free), type, type, "start", Style.BOLD, String.valueOf(s.steps()));
        shape(What.STEPS, "M" + n(x + 0.5) + " " + n(0.2 * type) + "V" + n(top), NONE, INK, 1.1, NONE);
        words.add(said);
        free = said.right() + 1;
      }
    }
    for (Climb.DecisionDay d : row.decisions()) {
      double x = x(d.date());
      double r = 0.3 * type;
      shape(What.DECISION, "M" + n(x - r) + " " + n(top - r) + "l" + n(r) + " " + n(-r) + " " + n(r) + " " + n(r) + " " + n(-r) + " " + n(r) + "Z", PAPER, BRICK, 1.1, NONE);
    }
  }

  /** A flag on its pole; filled for a main meet. */
  private void flag(double x, double ground, double pole, double side, boolean main) {
    shape(What.MEET, "M" + n(x) + " " + n(ground) + "V" + n(ground - pole), NONE, INK, 0.9, NONE);
    shape(
        What.MEET, "M" + n(x) + " " + n(ground - pole) + "l" + n(side) + " " + n(0.45 * side) + " " + n(-side) + " " + n(0.45 * side) + "Z",
        main ? BRICK : PAPER, main ? BRICK : INK, 0.9, NONE);
  }

  private void today(double height) {
    if (!season.today().isBefore(season.first()) && !season.today().isAfter(season.last())) {
      shape(What.TODAY, "M" + n(x(season.today())) + " 0V" + n(height), NONE, BRICK, 0.9, NONE);
    }
  }

  private String said(SeasonOverview.Row row) {
    StringBuilder out = new StringBuilder("Most of one leg in a week: ").append(Math.round(row.most())).append(" standing-bound contacts.");
    row.stages().forEach(s -> out.append(' ').append(DAY.format(s.from())).append(": ").append(Athlete.fromSteps(s.steps())).append('.'));
    row.decisions().forEach(d -> out.append(" Decided on ").append(DAY.format(d.date())).append('.'));
    row.jumps().forEach(j -> out.append(' ').append(j.meet().name()).append(' ').append(DAY.format(j.meet().date())).append(", ").append(j.importance().label()).append('.'));
    return out.toString();
  }

  private double width() {
    return size.week() * season.weeks();
  }

  /** The middle of a day. */
  private double x(LocalDate day) {
    return size.week() * (ChronoUnit.DAYS.between(season.first(), day) + 0.5) / 7;
  }

  private void shape(What what, String path, String fill, String stroke, double thickness, String dashes) {
    shapes.add(new Shape(what, path, fill, stroke, thickness, dashes));
  }

  static String box(double x, double y, double width, double height) {
    return "M" + n(x) + " " + n(y) + "h" + n(width) + "v" + n(height) + "h" + n(-width) + "Z";
  }

  /** To a hundredth, without a needless end. */
  static String n(double x) {
    String text = String.format(Locale.ROOT, "%.2f", x);
    return text.replaceAll("\\.?0+$", "").replaceAll("^-0$", "0");
  }
}

package boundwright.picture;

import static boundwright.picture.StripPaths.number;
import static boundwright.picture.StripPaths.round;

import boundwright.footfall.Foot;
import boundwright.load.Answer;
import boundwright.load.Band;
import boundwright.load.GuardLimits;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LegWeek;
import boundwright.picture.Lettering.Style;
import boundwright.picture.LoadPicture.Bar;
import boundwright.picture.LoadPicture.Limit;
import boundwright.picture.LoadPicture.Roof;
import boundwright.picture.LoadPicture.Rule;
import boundwright.picture.LoadPicture.Stem;
import boundwright.picture.LoadPicture.Swatch;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeSet;

/** Lays out the weeks and the sessions below them on one scale of days. */
public final class LoadDrawing {
  public static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
  private static final double WEEKS_HIGH = 176;
  private static final double SESSIONS_HIGH = 56;
  private static final double SIZE = 12;
    /** A session limit this many times above all that was done is written, not drawn: it would flatten the picture. */
  private static final double FAR = 1.7;

  private final List<LegWeek> weeks;
  private final List<DayLoad> days;
  private final Band session;
  private final GuardLimits guard;
  private final Width form;
  private final boolean wide;
  private final double left;
  private final double right;
  private final double slot;
  private final double bar;
  private final double small;
  private final double caption;

  private final List<Rule> rules = new ArrayList<>();
  private final List<Bar> bars = new ArrayList<>();
  private final List<Roof> roofs = new ArrayList<>();
  private final List<Limit> limits = new ArrayList<>();
  private final List<Stem> stems = new ArrayList<>();
  private final List<Swatch> swatches = new ArrayList<>();
  private final List<Lettering> words = new ArrayList<>();

  LoadDrawing(List<LegWeek> weeks, List<DayLoad> days, Band session, GuardLimits guard, Width form) {
    if (weeks.isEmpty()) {
      throw new RefusedException("A picture of the load needs at least 1 week; it was asked for 0. Ask for 8.");
    }
    LocalDate first = weeks.get(0).first();
    LocalDate last = weeks.get(weeks.size() - 1).last();
    this.weeks = weeks;
    this.days =
        days.stream()
            .filter(d -> !d.date().isBefore(first) && !d.date().isAfter(last))
            .sorted(Comparator.comparing(DayLoad::date))
            .toList();
    this.session = session;
    this.guard = guard;
    this.form = form;
    wide = form == Width.WIDE;
    left = wide ? 34 : 30;
    right = form.units() - (wide ? 122 : 34);
    slot = (right - left) / weeks.size();
    bar = Math.min(wide ? 24 : 17, slot * 0.36);
    small = wide ? 9.5 : 12;
    caption = wide ? 8.5 : 12;
  }

  LoadPicture draw() {
    double top = legend();
    double ground = top + WEEKS_HIGH;
    weeks(top, ground);
    double sessionsTop = ground + 72;
    sessions(sessionsTop, sessionsTop + SESSIONS_HIGH);
    return new LoadPicture(
        form.units(), sessionsTop + SESSIONS_HIGH + 6, form, title(), said(), rules, bars, roofs, limits, stems, swatches, words);
  }

  // ---- what the signs mean ----

  private double legend() {
    words.add(new Lettering(0, 9, caption, "start", Style.CAPTION, wide ? "LOAD OF EACH LEG IN SEVEN DAYS, STANDING-BOUND CONTACTS" : "LOAD OF EACH LEG, SEVEN DAYS"));
    SortedSet<Integer> rungs = new TreeSet<>();
    weeks.forEach(w -> rungs.addAll(w.byRung().keySet()));
    double x = 0;
    double y = 27;
    words.add(new Lettering(x, y, SIZE, "start", Style.PLAIN, "Left leg outlined, right leg filled."));
    x += Lettering.width("Left leg outlined, right leg filled.", SIZE, Style.PLAIN) + 14;
    if (!wide && !rungs.isEmpty()) {
      x = 0;
      y += 17;
    }
    double box = 9;
    for (int steps : rungs) {
      double needed = 2 * box + 6 + Lettering.width(RungInk.name(steps), SIZE, Style.PLAIN);
      if (x + needed > form.units()) {
        x = 0;
        y += 17;
      }
      swatches.add(
          new Swatch(steps, round(x + 0.5), y - box + 0.5, box, RungInk.fill(steps), RungInk.hatch(steps, x + 0.5, y - box + 0.5, box, box)));
      words.add(new Lettering(round(x + 2 * box + 6), y, SIZE, "start", Style.PLAIN, RungInk.name(steps)));
      x += needed + 13;
    }
    String key =
        (rungs.isEmpty() ? "" : "Figures in the bars: approach steps. ")
            + "Roof: both legs together. Lines, from the weeks before: caution (dashed), refused (full).";
    for (String line : Lettering.wrap(key, SIZE, Style.QUIET, form.units())) {
      y += 15;
      words.add(new Lettering(0, y, SIZE, "start", Style.QUIET, line));
    }
    return y + 22;
  }

  // ---- weeks ----

  private void weeks(double top, double ground) {
    double most = 10;
    for (LegWeek w : weeks) {
      most = Math.max(most, Math.max(w.units(), own(w).refuse()));
    }
    double scale = (ground - top) / (most * 1.04);
    scaleLines(most, scale, ground, wide ? 5 : 4);
    for (int i = 0; i < weeks.size(); i++) {
      week(i, weeks.get(i), scale, ground);
    }
    limitWords(scale, ground);
    rules.add(new Rule(left, right, ground, true));
    if (days.isEmpty()) {
      words.add(new Lettering(round((left + right) / 2), round(ground - 26), SIZE, "middle", Style.PLAIN, "Nothing was logged in these weeks."));
    }
    String each = wide ? "Seven days up to" : "Up to";
    words.add(new Lettering(left, ground + 41, small, "start", Style.QUIET, each + " the day named; " + (wide ? "jump contacts left and right." : "contacts of each leg.")));
  }

  private void week(int i, LegWeek week, double scale, double ground) {
    double middle = left + slot * (i + 0.5);
    double gap = wide ? 3 : 2;
    stack(i, week, Foot.LEFT, middle - gap / 2 - bar, scale, ground);
    stack(i, week, Foot.RIGHT, middle + gap / 2, scale, ground);
    double roofY = ground - scale * week.units();
    double half = 0;
    if (week.units() > 0) {
      double from = middle - gap / 2 - bar - 1.5;
      double to = middle + gap / 2 + bar + 1.5;
      roofs.add(
          new Roof(i, week.units(), round(roofY),
              "M" + number(from) + " " + number(roofY + 4) + "V" + number(roofY) + "H" + number(to) + "V" + number(roofY + 4)));
      String figure = String.valueOf(Math.round(week.units()));
      words.add(new Lettering(round(middle), round(roofY - 4), SIZE + 0.5, "middle", Style.BOLD, figure));
      half = Lettering.width(figure, SIZE + 0.5, Style.BOLD) / 2 + 3;
    }
    Band own = own(week);
    limit(i, false, own.caution(), ground - scale * own.caution(), middle, half, roofY);
    limit(i, true, own.refuse(), ground - scale * own.refuse(), middle, half, roofY);
    if (week.counts().both() > 0) {
      words.add(new Lettering(round(middle - 2.5), round(ground + 12), small, "end", Style.QUIET, String.valueOf(week.counts().left())));
      words.add(new Lettering(round(middle + 2.5), round(ground + 12), small, "start", Style.QUIET, String.valueOf(week.counts().right())));
    }
    double size = wide ? SIZE : small;
    int each = (int) Math.ceil(Lettering.width("30 Mar", size, Style.PLAIN) / slot);
    if ((weeks.size() - 1 - i) % each == 0) {
      words.add(new Lettering(round(middle), round(ground + 26), size, "middle", Style.PLAIN, DAY.format(week.last())));
    }
  }

  private void stack(int i, LegWeek week, Foot foot, double x, double scale, double ground) {
    double y = ground;
    boolean filled = foot == Foot.RIGHT;
    for (int steps : week.byRung().keySet()) {
      LegWeek.Legs legs = week.byRung().get(steps);
      double n = legs == null ? 0 : legs.of(foot);
      if (n <= 0) {
        continue;
      }
      double high = scale * n;
      y -= high;
      boolean named =
          steps > 0 && high >= (filled ? 12 : 20) && bar >= Lettering.width(String.valueOf(steps), small, Style.BOLD) + 1;
      bars.add(
          new Bar(i, filled, steps, n, round(x), round(y), round(bar), round(high), filled ? RungInk.fill(steps) : "#faf6ec",
              filled ? "" : hatch(steps, x, y, high, named)));
      if (named) {
        words.add(
            new Lettering(round(x + bar / 2), round(y + high / 2 + 3.2), small, "middle", filled ? RungInk.on(steps) : Style.BOLD,
                String.valueOf(steps)));
      }
    }
  }

  /** Hatching leaves a clear stripe for the figure. */
  private String hatch(int steps, double x, double y, double high, boolean named) {
    double clear = (high - 11) / 2;
    return named
        ? RungInk.hatch(steps, x, y, bar, clear) + RungInk.hatch(steps, x, y + high - clear, bar, clear)
        : RungInk.hatch(steps, x, y, bar, high);
  }

  /** The line over one week; a gap where the figure of the roof stands. */
  private void limit(int i, boolean refuses, double contacts, double y, double middle, double half, double roofY) {
    double from = left + slot * i + 1.5;
    double to = left + slot * (i + 1) - 1.5;
    boolean meets = half > 0 && y > roofY - 14.5 && y < roofY - 2;
    String path =
        meets
            ? "M" + number(from) + " " + number(y) + "H" + number(middle - half) + "M" + number(middle + half) + " " + number(y) + "H" + number(to)
            : "M" + number(from) + " " + number(y) + "H" + number(to);
    limits.add(new Limit(i, refuses, contacts, round(y), path));
  }

  private void limitWords(double scale, double ground) {
    Band newest = own(weeks.get(weeks.size() - 1));
    double refuse = ground - scale * newest.refuse();
    double caution = Math.max(ground - scale * newest.caution(), refuse + 13);
    words.add(limitWord("refused above ", newest.refuse(), refuse));
    words.add(limitWord("caution above ", newest.caution(), caution));
  }

  /** What a week is held to beside the athlete's own weeks, both legs. */
  private Band own(LegWeek week) {
    return guard.ownWeek(week.before());
  }

  private Lettering limitWord(String word, double contacts, double y) {
    return new Lettering(right + 4, round(y + 3.6), wide ? SIZE : small, "start", Style.PLAIN, (wide ? word : "") + whole(contacts));
  }

  private void scaleLines(double most, double scale, double ground, int about) {
    int step = step(most, about);
    for (int v = step; v <= most; v += step) {
      rules.add(new Rule(left, right, round(ground - scale * v), false));
      words.add(new Lettering(left - 5, round(ground - scale * v + 3.2), small, "end", Style.QUIET, String.valueOf(v)));
    }
  }

  /** 1, 2 or 5 times a power of ten, so that at most {@code about} lines are drawn. */
  static int step(double most, int about) {
    int power = 1;
    while (true) {
      for (int s : new int[] {1, 2, 5}) {
        if (most / (s * power) <= about) {
          return s * power;
        }
      }
      power *= 10;
    }
  }

  // ---- sessions ----

  private void sessions(double top, double ground) {
    words.add(new Lettering(0, round(top - 8), caption, "start", Style.CAPTION, wide ? "JUMP CONTACTS OF EACH SESSION, BOTH LEGS" : "CONTACTS OF EACH SESSION"));
    int highest = days.stream().mapToInt(DayLoad::contacts).max().orElse(0);
    double shown = Math.max(highest, session.caution());
    boolean refuseDrawn = session.refuse() <= FAR * shown;
    double most = refuseDrawn ? Math.max(shown, session.refuse()) : shown;
    double scale = (ground - top - 4) / most;
    rules.add(new Rule(left, right, ground, true));
    double caution = ground - scale * session.caution();
    double refuse = ground - scale * session.refuse();
    List<Lettering> figures = new ArrayList<>();
    double refuseWord = refuseDrawn ? refuse : top - 6;
    words.add(limitWord("refused above ", session.refuse(), refuseWord));
    words.add(limitWord("caution above ", session.caution(), Math.max(caution, refuseWord + 13)));
    for (DayLoad d : days) {
      long day = ChronoUnit.DAYS.between(weeks.get(0).first(), d.date());
      double x = left + slot * (day + 0.5) / 7;
      double y = ground - scale * d.contacts();
      stems.add(new Stem(d.date(), d.contacts(), round(x), round(y), ground));
      if (session.judge(d.contacts()) != Answer.ALLOWED) {
        figures.add(new Lettering(round(x), round(y - 4), small, "middle", Style.BOLD, String.valueOf(d.contacts())));
      }
    }
    List<Lettering> kept = withoutOverlap(figures);
    words.addAll(kept);
    sessionLimit(false, session.caution(), caution, kept);
    if (refuseDrawn) {
      sessionLimit(true, session.refuse(), refuse, kept);
    }
  }

  /** Where two figures would touch, the higher one, which is the larger session, stays. */
  private static List<Lettering> withoutOverlap(List<Lettering> figures) {
    List<Lettering> kept = new ArrayList<>();
    figures.stream()
        .sorted(Comparator.comparingDouble(Lettering::y))
        .filter(f -> kept.stream().noneMatch(k -> f.left() < k.right() + 2 && k.left() < f.right() + 2 && Math.abs(f.y() - k.y()) < f.size()))
        .forEach(kept::add);
    kept.sort(Comparator.comparingDouble(Lettering::x));
    return kept;
  }

  /** A line through all sessions, with gaps where their figures stand. */
  private void sessionLimit(boolean refuses, double contacts, double y, List<Lettering> figures) {
    StringBuilder path = new StringBuilder("M").append(number(left)).append(' ').append(number(y));
    for (Lettering f : figures) {
      if (y < f.y() + 2 && y > f.y() - f.size()) {
        path.append('H').append(number(Math.max(left, f.left() - 2))).append('M').append(number(f.right() + 2)).append(' ').append(number(y));
      }
    }
    limits.add(new Limit(-1, refuses, contacts, round(y), path.append('H').append(number(right)).toString()));
  }

  // ---- in words ----

  private String title() {
    return "Load of each leg over " + Notes.counted(weeks.size(), "week") + ", up to " + DAY.format(weeks.get(weeks.size() - 1).last());
  }

  private String said() {
    StringBuilder out = new StringBuilder("Bars for the left leg (outlined) and the right leg (filled), stacked by approach steps. ");
    for (LegWeek w : weeks) {
      out.append("Seven days up to ").append(DAY.format(w.last())).append(": ").append(units(w.units(Foot.RIGHT)))
          .append(" standing-bound contacts right, ").append(units(w.units(Foot.LEFT))).append(" left");
      w.byRung().forEach((steps, legs) -> out.append(", ").append(units(legs.both())).append(steps < 0 ? " by " : " from ").append(RungInk.name(steps)));
      out.append("; caution above ").append(whole(own(w).caution())).append(", refused above ").append(whole(own(w).refuse())).append(". ");
    }
    out.append("A single session in jump contacts: caution above ").append(whole(session.caution())).append(", refused above ")
        .append(whole(session.refuse())).append(". ");
    days.stream()
        .max(Comparator.comparingInt(DayLoad::contacts))
        .ifPresent(d -> out.append("The largest was ").append(d.contacts()).append(" on ").append(DAY.format(d.date())).append('.'));
    return out.toString().strip();
  }

  private static String units(double n) {
    return String.valueOf(Math.round(n));
  }

  /** Limits are passed by whole contacts only, so what is left over is cut off. */
  static String whole(double contacts) {
    return String.valueOf((long) Math.floor(contacts + 1e-9));
  }
}

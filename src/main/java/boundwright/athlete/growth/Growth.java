package boundwright.athlete.growth;

import boundwright.athlete.person.Person;
import boundwright.athlete.person.Sex;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What follows from somebody's measurements on a day. */
final class Growth {
  /** From this age on nothing is said [y] (judgement). */
  static final int ADULT = 20;
  /** Fewest days from the first height to the last from which a speed is told (judgement). */
  private static final int FEWEST_DAYS = 28;
  /** Weeks after the last height for which a speed is still told (judgement). */
  private static final int MOST_WEEKS = 26;
  /** Fewest weeks between two heights: nearer ones tell little (judgement). */
  private static final int LEAST_WEEKS = 4;
  /** Upper end of the speed below which heights are asked for seldom [cm/y] (judgement). */
  private static final double GROWN = 2;
  /** Weeks for which what is said of fast growth is remembered: by then the limits have risen to the usual ones (judgement). */
  private static final int REMEMBERED_WEEKS = 52;
  private static final int CURVE_DAYS = 14;
  private static final Estimate UNKNOWN = new Estimate(1, 1, 1);

  private final Person person;
  private final List<Measurement> measured;
  private final GrowthSettings settings;
  private final LocalDate today;

  /** Of these measurements in any order; those after today are left out. */
  Growth(Person person, List<Measurement> measured, GrowthSettings settings, LocalDate today) {
    this.person = person;
    this.measured =
        measured.stream().filter(m -> !m.date().isAfter(today)).sorted(Comparator.comparing(Measurement::date).thenComparingLong(Measurement::id)).toList();
    this.settings = settings;
    this.today = today;
  }

  private boolean adult() {
    OptionalInt age = person.age(today);
    return age.isPresent() && age.getAsInt() >= ADULT;
  }

  /** Whether the speed believed most lies above the setting, by all of these heights. */
  static boolean isFast(List<Measurement> measured, GrowthSettings settings) {
    LocalDate last = measured.stream().map(Measurement::date).max(Comparator.naturalOrder()).orElse(LocalDate.MIN);
    Growth all = new Growth(Person.UNKNOWN, measured, settings, last);
    return all.enough() && GrowthTrend.of(all.measured).isAbove(settings.fast_cm_y());
  }

  private boolean enough() {
    return !measured.isEmpty() && !last().isBefore(measured.get(0).date().plusDays(FEWEST_DAYS));
  }

  private LocalDate last() {
    return measured.get(measured.size() - 1).date();
  }

  /** That they grow fast, or null. A height that is old still counts: lower limits do not end because nobody measured. */
  @Nullable FastGrowth fast() {
    return adult() || !enough() ? null : fast(GrowthTrend.of(measured));
  }

  private @Nullable FastGrowth fast(GrowthTrend trend) {
    double limit = settings.fast_cm_y();
    LocalDate until = trend.lastAbove(limit, measured.get(0).date().plusDays(FEWEST_DAYS));
    boolean now = trend.last().equals(until);
    if (until == null || (!now && until.isBefore(today.minusWeeks(REMEMBERED_WEEKS)))) {
      return null;
    }
    Estimate speed = trend.on(trend.last()).speed_cm_y();
    return new FastGrowth(now, until, speed.p50(), speed.p05(), speed.p95(), trend.last(), limit);
  }

  GrowthAnswer answer() {
    if (adult()) {
      return new GrowthAnswer(measured, null, "From " + ADULT + " years on nothing is said of growth.", null, null, null, null, "", List.of(), settings);
    }
    if (measured.isEmpty()) {
      boolean young = person.age(today).isPresent();
      return new GrowthAnswer(
          measured, null, "No height is kept yet.", null, null, null, young ? today : null, young ? "There is no height yet." : "", List.of(), settings);
    }
    GrowthTrend trend = GrowthTrend.of(measured);
    Estimate speed = null;
    String missing = null;
    if (!enough()) {
      missing = "How fast is told from two heights at least four weeks apart.";
    } else if (trend.last().isBefore(today.minusWeeks(MOST_WEEKS))) {
      missing = "The last height is " + ChronoUnit.WEEKS.between(trend.last(), today) + " weeks old, too old to say how fast it goes now.";
    } else {
      speed = trend.on(today).speed_cm_y();
    }
    MaturityOffset offset = null;
    String offsetMissing = null;
    try {
      offset = offset();
    } catch (RefusedException e) {
      offsetMissing = e.getMessage();
    }
    Next next = next(trend);
    return new GrowthAnswer(
        measured, speed, missing, enough() ? fast(trend) : null, offset, offsetMissing, next.day.isBefore(today) ? today : next.day, next.why,
        measured.get(0).date().equals(trend.last()) ? List.of() : GrowthTrend.curve(measured, CURVE_DAYS), settings);
  }

  /**
   * How much taller they are than on each of these days, in their order; empty where nothing is said. Nothing is said of days before the first
   * height, so that they count as that day, and after the last one growth is believed for {@value #MOST_WEEKS} weeks.
   */
  List<Grown> since(List<LocalDate> days) {
    if (adult() || !enough()) {
      return List.of();
    }
    LocalDate first = measured.get(0).date();
    LocalDate last = last();
    LocalDate now = today.isAfter(last.plusWeeks(MOST_WEEKS)) ? last.plusWeeks(MOST_WEEKS) : today;
    List<LocalDate> asked = days.stream().map(d -> d.isBefore(first) ? first : d.isAfter(now) ? now : d).toList();
    Map<LocalDate, Estimate> height = GrowthTrend.heights(measured, Stream.concat(asked.stream(), Stream.of(now)).toList());
    Estimate at = height.getOrDefault(now, UNKNOWN);
    List<Grown> out = new ArrayList<>();
    for (int i = 0; i < days.size(); i++) {
      Estimate then = height.getOrDefault(asked.get(i), UNKNOWN);
      double ratio = asked.get(i).equals(now) ? 1 : Math.max(1, at.p50() / then.p50());
      double sd = asked.get(i).equals(now) ? 0 : Math.hypot(at.halfWidth() / at.p50(), then.halfWidth() / then.p50()) / Estimate.Z95;
      out.add(new Grown(days.get(i), ratio, sd));
    }
    return out;
  }

  private MaturityOffset offset() {
    LocalDate born = person.born();
    Sex sex = person.sex();
    if (born == null || sex == null) {
      throw new RefusedException("Years from the height spurt need birth date and sex, on the page of what is kept of the athlete.");
    }
    Measurement last = measured.get(measured.size() - 1);
    return MaturityOffset.of(sex, GrowthTrend.years(born, last.date()), 100 * last.height_m());
  }

  /** Whether the next height is due. */
  boolean due() {
    // no next one is asked for sooner, so most of a squad's page works nothing out
    boolean soon = measured.isEmpty() || today.isBefore(last().plusWeeks(LEAST_WEEKS));
    return !adult() && !soon && !next(GrowthTrend.of(measured)).day.isAfter(today);
  }

  private record Next(LocalDate day, String why) {}

  /** When the speed will be less sure than the setting wants, within the weeks of the settings. */
  private Next next(GrowthTrend trend) {
    LocalDate last = trend.last();
    if (enough() && trend.below(GROWN) > 0.95) {
      return new Next(last.plusWeeks(MOST_WEEKS), "There is hardly any growth: twice a year is enough.");
    }
    for (int weeks = LEAST_WEEKS; weeks < settings.weeks(); weeks++) {
      if (trend.unsure_cm_y(last.plusWeeks(weeks)) > settings.unsure_cm_y()) {
        LocalDate day = last.plusWeeks(weeks);
        return new Next(day, (day.isAfter(today) ? "From then on the speed is" : "The speed is") + " less sure than the " + plain(settings.unsure_cm_y()) + " cm a year of the settings.");
      }
    }
    return new Next(last.plusWeeks(settings.weeks()), settings.weeks() + " weeks after the last height, as set.");
  }

  private static String plain(double x) {
    return x == Math.rint(x) ? String.valueOf((long) x) : String.valueOf(x);
  }
}

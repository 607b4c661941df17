package boundwright.store.season;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.load.Band;
import boundwright.load.GuardLimits;
import boundwright.load.GuardSettings;
import boundwright.load.Season;
import boundwright.load.account.ContactTimes;
import boundwright.load.account.LoadScale;
import boundwright.season.Period;
import boundwright.season.SeasonRules;
import boundwright.season.Unplanned;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Month;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The coach's rules in a file; what is not said is as usual. */
final class RulesJson {
  private static final int MOST = 5000;

  private RulesJson() {}

  /**
   * Writes them; the limits and the scale of the load account only where they are not the facility's, so that those may still change.
   *
   * @param facility what the facility set
   */
  static void write(ObjectNode to, SeasonRules rules, GuardSettings facility) {
    ObjectNode weeks = to.putObject("week");
    for (Period.Kind k : Period.Kind.values()) {
      SeasonRules.Week w = rules.week(k);
      weeks
          .putObject(k.label())
          .put("share", w.share())
          .put("bounds", w.bounds())
          .put("combinations", w.combinations())
          .put("shortJumps", w.jumps());
    }
    to.put("lighterEvery_weeks", rules.lighterEvery()).put("lighterShare", rules.lighterShare());
    SeasonRules.Taper t = rules.taper();
    to.putObject("taper").put("days", t.days()).put("leastCut", t.leastCut()).put("cut", t.cut()).put("mostCut", t.mostCut());
    to.put("testEvery_weeks", rules.testEvery()).put("softDay_contacts", rules.softContacts()).put("notice_days", rules.noticeDays());
    to.put("spareShare", rules.spareShare());
    unplanned(to.putObject("unplanned"), rules.unplanned());
    if (!rules.guard().limits().equals(facility.limits())) {
      limits(to.putObject("limits"), rules.guard().limits());
    }
    if (!rules.guard().scale().equals(facility.scale())) {
      scale(to.putObject("scale"), rules.guard().scale());
    }
  }

  static SeasonRules read(@Nullable Place at, GuardSettings facility) {
    SeasonRules usual = SeasonRules.usual(facility);
    if (at == null) {
      return usual;
    }
    Map<Period.Kind, SeasonRules.Week> week = new EnumMap<>(Period.Kind.class);
    Place weeks = at.object("week");
    for (Period.Kind k : Period.Kind.values()) {
      week.put(k, week(weeks == null ? null : weeks.object(k.label()), usual.week(k)));
    }
    if (weeks != null) {
      weeks.done();
    }
    int lighterEvery = at.whole("lighterEvery_weeks", 0, 12, usual.lighterEvery());
    double lighterShare = at.number("lighterShare", 0.3, 1, usual.lighterShare());
    SeasonRules.Taper taper = taper(at.object("taper"), usual.taper());
    int testEvery = at.whole("testEvery_weeks", 0, 26, usual.testEvery());
    int soft = at.whole("softDay_contacts", 0, 200, usual.softContacts());
    int notice = at.whole("notice_days", 0, 14, usual.noticeDays());
    double spare = at.number("spareShare", 0, 0.25, usual.spareShare());
    GuardLimits limits = limits(at.object("limits"), facility.limits());
    LoadScale scale = scale(at.object("scale"), facility.scale());
    Unplanned unplanned = unplanned(at.object("unplanned"), usual.unplanned());
    at.done();
    return at.make(() -> new SeasonRules(week, lighterEvery, lighterShare, taper, testEvery, soft, notice, spare, new GuardSettings(limits, scale), unplanned));
  }

  private static void unplanned(ObjectNode to, Unplanned u) {
    ObjectNode months = to.putObject("grassClosed_share");
    for (Month m : Month.values()) {
      months.put(word(m), u.grassClosed(m));
    }
    to.put("awayOrHeld_perYear", u.awayPerYear()).put("awayOrHeld_days", u.awayDays());
  }

  private static Unplanned unplanned(@Nullable Place at, Unplanned usual) {
    if (at == null) {
      return usual;
    }
    List<Double> grass = new ArrayList<>();
    Place months = at.object("grassClosed_share");
    for (Month m : Month.values()) {
      grass.add(months == null ? usual.grassClosed(m) : (Double) months.number(word(m), 0, 1, usual.grassClosed(m)));
    }
    if (months != null) {
      months.done();
    }
    double perYear = at.number("awayOrHeld_perYear", 0, 26, usual.awayPerYear());
    double days = at.number("awayOrHeld_days", 1, 60, usual.awayDays());
    at.done();
    return at.make(() -> new Unplanned(grass, perYear, days));
  }

  private static String word(Month m) {
    return m.name().toLowerCase(Locale.ROOT);
  }

  private static SeasonRules.Week week(@Nullable Place at, SeasonRules.Week usual) {
    if (at == null) {
      return usual;
    }
    double share = at.number("share", 0, 1, usual.share());
    int bounds = at.whole("bounds", 0, 7, usual.bounds());
    int combinations = at.whole("combinations", 0, 7, usual.combinations());
    int jumps = at.whole("shortJumps", 0, 7, usual.jumps());
    at.done();
    return new SeasonRules.Week(share, bounds, combinations, jumps);
  }

  private static SeasonRules.Taper taper(@Nullable Place at, SeasonRules.Taper usual) {
    if (at == null) {
      return usual;
    }
    int days = at.whole("days", 7, 28, usual.days());
    double least = at.number("leastCut", 0, 0.9, usual.leastCut());
    double cut = at.number("cut", 0, 0.95, usual.cut());
    double most = at.number("mostCut", 0, 0.95, usual.mostCut());
    at.done();
    return at.make(() -> new SeasonRules.Taper(days, least, cut, most));
  }

  private static void limits(ObjectNode to, GuardLimits l) {
    ObjectNode seasons = to.putObject("session_contacts");
    for (Season s : Season.values()) {
      ObjectNode levels = seasons.putObject(s.label());
      Level.KNOWN.forEach(level -> band(levels, level.label(), l.session(s, level)));
    }
    band(to, "growing_contacts", l.growing());
    to.put("growing_weeks", l.growingWeeks()).put("growing_sessionsInSevenDays", l.growingSessions());
    to.put("growingStep_contacts", l.growingStep()).put("growingStep_weeks", l.growingStepWeeks());
    band(to, "spacing_hours", l.spacingHours());
    to.put("hardFrom_contacts", l.hardContacts()).put("hardFrom_steps", l.hardSteps());
    band(to, "aboveOwnWeeks_percent", l.ownPercent());
    to.put("startWeek_standingBounds", l.startWeek());
    to.put("seriesFrom_steps", l.seriesSteps()).put("seriesFrom_contacts", l.seriesContacts()).put("seriesRefusedFrom_steps", l.seriesRefusedSteps());
    band(to, "pain_of10", l.pain());
  }

  private static GuardLimits limits(@Nullable Place at, GuardLimits usual) {
    if (at == null) {
      return usual;
    }
    Map<Season, Map<Level, Band>> session = new EnumMap<>(Season.class);
    Place seasons = at.object("session_contacts");
    for (Season s : Season.values()) {
      Place levels = seasons == null ? null : seasons.object(s.label());
      Map<Level, Band> row = new EnumMap<>(Level.class);
      for (Level level : Level.KNOWN) {
        row.put(level, levels == null ? usual.session(s, level) : band(levels, level.label(), MOST, usual.session(s, level)));
      }
      if (levels != null) {
        levels.done();
      }
      session.put(s, row);
    }
    if (seasons != null) {
      seasons.done();
    }
    Band growing = band(at, "growing_contacts", MOST, usual.growing());
    int growingWeeks = at.whole("growing_weeks", 1, 400, usual.growingWeeks());
    int growingSessions = at.whole("growing_sessionsInSevenDays", 1, 14, usual.growingSessions());
    int step = at.whole("growingStep_contacts", 1, MOST, usual.growingStep());
    int stepWeeks = at.whole("growingStep_weeks", 1, 400, usual.growingStepWeeks());
    Band spacing = band(at, "spacing_hours", 400, usual.spacingHours());
    int hardContacts = at.whole("hardFrom_contacts", 1, MOST, usual.hardContacts());
    int hardSteps = at.whole("hardFrom_steps", 0, Athlete.MAX_STEPS + 1, usual.hardSteps());
    Band own = band(at, "aboveOwnWeeks_percent", 400, usual.ownPercent());
    int startWeek = at.whole("startWeek_standingBounds", 1, MOST, usual.startWeek());
    int seriesSteps = at.whole("seriesFrom_steps", 0, Athlete.MAX_STEPS + 1, usual.seriesSteps());
    int seriesContacts = at.whole("seriesFrom_contacts", 1, 60, usual.seriesContacts());
    int seriesRefused = at.whole("seriesRefusedFrom_steps", 0, Athlete.MAX_STEPS + 1, usual.seriesRefusedSteps());
    Band pain = band(at, "pain_of10", 10, usual.pain());
    at.done();
    return at.make(
        () ->
            new GuardLimits(
                session, growing, growingWeeks, growingSessions, step, stepWeeks, spacing, hardContacts, hardSteps, own, startWeek, seriesSteps,
                seriesContacts, seriesRefused, pain));
  }

  private static void band(ObjectNode to, String key, Band band) {
    to.putObject(key).put("caution", band.caution()).put("refused", band.refuse());
  }

  private static Band band(Place at, String key, double most, Band usual) {
    Place own = at.object(key);
    if (own == null) {
      return usual;
    }
    double caution = own.number("caution", 0, most);
    double refused = own.number("refused", 0, most);
    own.done();
    return own.make(() -> new Band(caution, refused));
  }

  private static void scale(ObjectNode to, LoadScale s) {
    to.put("power", s.power()).put("contactStanding_s", s.times().standing_s()).put("contactFull_s", s.times().full_s());
    if (s.times().factor().stream().anyMatch(f -> f != 1)) {
      ArrayNode factors = to.putArray("contactFactorBySteps");
      s.times().factor().forEach(f -> factors.add(f));
    }
    to.put("weightsSet_standingBounds", s.setUnits()).put("sportHour_standingBounds", s.sportUnits());
  }

  private static LoadScale scale(@Nullable Place at, LoadScale usual) {
    if (at == null) {
      return usual;
    }
    double power = at.number("power", LoadScale.LEAST_POWER, LoadScale.MOST_POWER, usual.power());
    double standing = at.number("contactStanding_s", 0.1, 0.6, usual.times().standing_s());
    double full = at.number("contactFull_s", 0.08, 0.6, usual.times().full_s());
    boolean learned = at.has("contactFactorBySteps");
    List<Double> factors = at.numbers("contactFactorBySteps", 0.1, 10);
    if (learned && factors.size() != Athlete.MAX_STEPS + 1) {
      throw at.wrong("contactFactorBySteps", factors.size() + " numbers; needed is one for each of 0 to " + Athlete.MAX_STEPS + " steps. Leave the key out for none.");
    }
    double set = at.number("weightsSet_standingBounds", 0, 20, usual.setUnits());
    double sport = at.number("sportHour_standingBounds", 0, 200, usual.sportUnits());
    at.done();
    return at.make(
        () -> new LoadScale(power, learned ? new ContactTimes(standing, full, factors) : new ContactTimes(standing, full), set, sport));
  }
}

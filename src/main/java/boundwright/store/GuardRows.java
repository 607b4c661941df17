package boundwright.store;

import boundwright.athlete.Level;
import boundwright.load.Band;
import boundwright.load.GuardLimits;
import boundwright.load.GuardSettings;
import boundwright.load.Season;
import boundwright.load.account.ContactTimes;
import boundwright.load.account.LoadScale;
import boundwright.store.rows.SettingRows;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.jdbi.v3.core.Handle;

/** The guard's limits and how contacts are weighed as rows of the settings, each with its unit: h hours, d days, wk weeks, s seconds,
 * % per cent, 1 a count or a grade. */
final class GuardRows {
  private static final String COUNT = "1";

  private GuardRows() {}

  static void keep(Handle h, GuardSettings settings) {
    GuardLimits l = settings.limits();
    for (Season season : Season.values()) {
      for (Level level : Level.KNOWN) {
        band(h, session(season, level), l.session(season, level), COUNT);
      }
    }
    band(h, "guard.growing", l.growing(), COUNT);
    SettingRows.keep(h, "guard.growing.weeks", l.growingWeeks(), "wk");
    SettingRows.keep(h, "guard.growing.sessions", l.growingSessions(), COUNT);
    SettingRows.keep(h, "guard.growing.step", l.growingStep(), COUNT);
    SettingRows.keep(h, "guard.growing.step_weeks", l.growingStepWeeks(), "wk");
    band(h, "guard.spacing", l.spacingHours(), "h");
    SettingRows.keep(h, "guard.hard.contacts", l.hardContacts(), COUNT);
    SettingRows.keep(h, "guard.hard.steps", l.hardSteps(), COUNT);
    band(h, "guard.ramp", l.ownPercent(), "%");
    SettingRows.keep(h, "guard.start_week", l.startWeek(), COUNT);
    SettingRows.keep(h, "guard.series.steps", l.seriesSteps(), COUNT);
    SettingRows.keep(h, "guard.series.contacts", l.seriesContacts(), COUNT);
    SettingRows.keep(h, "guard.series.refused_steps", l.seriesRefusedSteps(), COUNT);
    band(h, "guard.pain", l.pain(), COUNT);
    LoadScale scale = settings.scale();
    SettingRows.keep(h, "load.power", scale.power(), COUNT);
    SettingRows.keep(h, "load.contact.standing", scale.times().standing_s(), "s");
    SettingRows.keep(h, "load.contact.full", scale.times().full_s(), "s");
    SettingRows.keep(h, "load.weights_set", scale.setUnits(), COUNT);
    SettingRows.keep(h, "load.sport_hour", scale.sportUnits(), COUNT);
  }

  static GuardSettings read(SettingRows rows) {
    GuardLimits d = GuardSettings.DEFAULT.limits();
    Map<Season, Map<Level, Band>> sessions = new EnumMap<>(Season.class);
    for (Season season : Season.values()) {
      Map<Level, Band> row = new EnumMap<>(Level.class);
      for (Level level : Level.KNOWN) {
        row.put(level, band(rows, session(season, level), d.session(season, level)));
      }
      sessions.put(season, row);
    }
    return new GuardSettings(
        new GuardLimits(
            sessions,
            band(rows, "guard.growing", d.growing()),
            rows.whole("guard.growing.weeks", d.growingWeeks()),
            rows.whole("guard.growing.sessions", d.growingSessions()),
            rows.whole("guard.growing.step", d.growingStep()),
            rows.whole("guard.growing.step_weeks", d.growingStepWeeks()),
            band(rows, "guard.spacing", d.spacingHours()),
            rows.whole("guard.hard.contacts", d.hardContacts()),
            rows.whole("guard.hard.steps", d.hardSteps()),
            band(rows, "guard.ramp", d.ownPercent()),
            rows.whole("guard.start_week", d.startWeek()),
            rows.whole("guard.series.steps", d.seriesSteps()),
            rows.whole("guard.series.contacts", d.seriesContacts()),
            rows.whole("guard.series.refused_steps", d.seriesRefusedSteps()),
            band(rows, "guard.pain", d.pain())),
        scale(rows));
  }

  private static LoadScale scale(SettingRows rows) {
    LoadScale d = LoadScale.DEFAULT;
    return new LoadScale(
        rows.number("load.power", d.power()),
        new ContactTimes(rows.number("load.contact.standing", d.times().standing_s()), rows.number("load.contact.full", d.times().full_s())),
        rows.number("load.weights_set", d.setUnits()),
        rows.number("load.sport_hour", d.sportUnits()));
  }

  private static String session(Season season, Level level) {
    return "guard.session." + season.name().toLowerCase(Locale.ROOT) + "." + level.name().toLowerCase(Locale.ROOT);
  }

  private static void band(Handle h, String key, Band band, String unit) {
    SettingRows.keep(h, key + ".caution", band.caution(), unit);
    SettingRows.keep(h, key + ".refuse", band.refuse(), unit);
  }

  private static Band band(SettingRows rows, String key, Band otherwise) {
    return new Band(rows.number(key + ".caution", otherwise.caution()), rows.number(key + ".refuse", otherwise.refuse()));
  }
}

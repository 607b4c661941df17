package boundwright.store;

import boundwright.athlete.Level;
import boundwright.load.Band;
import boundwright.load.GuardLimits;
import boundwright.load.GuardSettings;
import boundwright.load.Season;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.jdbi.v3.core.Handle;

/** The guard's limits as rows of the settings, each with its unit: h hours, d days, wk weeks, % per cent, 1 a count or a grade. */
final class GuardRows {
  private static final String COUNT = "1";

  private GuardRows() {}

  static void keep(Handle h, GuardSettings settings) {
    GuardLimits l = settings.limits();
    SettingRows.keep(h, "guard.season", settings.season().name());
    for (Season season : Season.values()) {
      for (Level level : Level.values()) {
        band(h, session(season, level), l.session(season, level), COUNT);
      }
    }
    band(h, "guard.growing", l.growing(), COUNT);
    SettingRows.keep(h, "guard.growing.weeks", l.growingWeeks(), "wk");
    SettingRows.keep(h, "guard.growing.sessions", l.growingSessions(), COUNT);
    band(h, "guard.spacing", l.spacingHours(), "h");
    SettingRows.keep(h, "guard.hard.contacts", l.hardContacts(), COUNT);
    SettingRows.keep(h, "guard.hard.steps", l.hardSteps(), COUNT);
    band(h, "guard.ramp", l.rampPercent(), "%");
    SettingRows.keep(h, "guard.ramp.floor", l.rampFloor(), COUNT);
    SettingRows.keep(h, "guard.series.steps", l.seriesSteps(), COUNT);
    SettingRows.keep(h, "guard.series.contacts", l.seriesContacts(), COUNT);
    SettingRows.keep(h, "guard.series.refused_steps", l.seriesRefusedSteps(), COUNT);
    band(h, "guard.pain", l.pain(), COUNT);
  }

  static GuardSettings read(SettingRows rows) {
    GuardLimits d = GuardSettings.DEFAULT.limits();
    Map<Season, Map<Level, Band>> sessions = new EnumMap<>(Season.class);
    for (Season season : Season.values()) {
      Map<Level, Band> row = new EnumMap<>(Level.class);
      for (Level level : Level.values()) {
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
            band(rows, "guard.spacing", d.spacingHours()),
            rows.whole("guard.hard.contacts", d.hardContacts()),
            rows.whole("guard.hard.steps", d.hardSteps()),
            band(rows, "guard.ramp", d.rampPercent()),
            rows.whole("guard.ramp.floor", d.rampFloor()),
            rows.whole("guard.series.steps", d.seriesSteps()),
            rows.whole("guard.series.contacts", d.seriesContacts()),
            rows.whole("guard.series.refused_steps", d.seriesRefusedSteps()),
            band(rows, "guard.pain", d.pain())),
        Columns.word(Season.class, "part of the year", rows.word("guard.season", GuardSettings.DEFAULT.season().name())));
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

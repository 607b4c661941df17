package boundwright.store;

import boundwright.meet.MeasureRule;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSettings;
import org.jdbi.v3.core.Handle;

/** The settings of the jump and the meet as rows of the settings. */
final class MeetRows {
  private static final String COUNT = "1";
  private static final String SHARE = "1";
  private static final String METRES = "m";
  private static final String POINTS = "percentage points";
  private static final String SECONDS = "s";

  private MeetRows() {}

  static MeetSettings read(SettingRows rows) {
    MeetSettings d = MeetSettings.DEFAULT;
    MeetRules r = d.rules();
    return new MeetSettings(
        rows.number("jump.class_threshold", d.classThreshold()),
        rows.number("jump.rhythm", d.rhythm_m()),
        rows.whole("jump.check_steps", d.checkSteps()),
        rows.whole("jump.early_step", d.earlyStep()),
        rows.number("jump.no_mark_below", d.noMarkBelow_m()),
        rows.number("meet.rival_spread", d.rivalSd_m()),
        rows.number("meet.rival_fouls", d.rivalFouls()),
        new MeetRules(
            rows.whole("meet.first_rounds", r.firstRounds()),
            rows.whole("meet.rounds", r.rounds()),
            rows.whole("meet.finalists", r.finalists()),
            Columns.word(MeetRules.FinalOrder.class, "order of the last rounds", rows.word("meet.final_order", r.order().name())),
            Columns.word(MeasureRule.class, "rule of measuring", rows.word("meet.measure", r.measure().name())),
            rows.whole("meet.trial_seconds", r.trialSeconds())));
  }

  static void keep(Handle h, MeetSettings s) {
    SettingRows.keep(h, "jump.class_threshold", s.classThreshold(), POINTS);
    SettingRows.keep(h, "jump.rhythm", s.rhythm_m(), METRES);
    SettingRows.keep(h, "jump.check_steps", s.checkSteps(), COUNT);
    SettingRows.keep(h, "jump.early_step", s.earlyStep(), COUNT);
    SettingRows.keep(h, "jump.no_mark_below", s.noMarkBelow_m(), METRES);
    SettingRows.keep(h, "meet.rival_spread", s.rivalSd_m(), METRES);
    SettingRows.keep(h, "meet.rival_fouls", s.rivalFouls(), SHARE);
    SettingRows.keep(h, "meet.first_rounds", s.rules().firstRounds(), COUNT);
    SettingRows.keep(h, "meet.rounds", s.rules().rounds(), COUNT);
    SettingRows.keep(h, "meet.finalists", s.rules().finalists(), COUNT);
    SettingRows.keep(h, "meet.final_order", s.rules().order().name());
    SettingRows.keep(h, "meet.measure", s.rules().measure().name());
    SettingRows.keep(h, "meet.trial_seconds", s.rules().trialSeconds(), SECONDS);
  }
}

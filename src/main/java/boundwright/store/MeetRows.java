package boundwright.store;

import boundwright.approach.aim.AimSettings;
import boundwright.approach.run.RunUpSettings;
import boundwright.jump.JumpSettings;
import boundwright.jump.MeasureRule;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSettings;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import org.jdbi.v3.core.Handle;

/** The settings of the jump and the meet as rows of the settings. */
final class MeetRows {
  private static final String COUNT = "1";
  private static final String SHARE = "1";
  private static final String METRES = "m";
  private static final String POINTS = "percentage points";
  private static final String SECONDS = "s";

  private MeetRows() {}

  static JumpSettings jump(SettingRows rows) {
    return new JumpSettings(rows.number("jump.class_threshold", JumpSettings.DEFAULT.classThreshold()));
  }

  static RunUpSettings runUp(SettingRows rows) {
    RunUpSettings d = RunUpSettings.DEFAULT;
    return new RunUpSettings(
        rows.number("jump.rhythm", d.rhythm_m()),
        rows.whole("jump.check_steps", d.checkSteps()),
        rows.whole("jump.early_step", d.earlyStep()));
  }

  static AimSettings aim(SettingRows rows) {
    AimSettings d = AimSettings.DEFAULT;
    return new AimSettings(
        rows.number("jump.no_mark_below", d.noMarkBelow_m()),
        rows.number("meet.rival_spread", d.rivalSd_m()),
        rows.number("meet.rival_fouls", d.rivalFouls()));
  }

  static MeetSettings read(SettingRows rows) {
    MeetRules r = MeetRules.DEFAULT;
    return new MeetSettings(
        jump(rows),
        runUp(rows),
        aim(rows),
        new MeetRules(
            rows.whole("meet.first_rounds", r.firstRounds()),
            rows.whole("meet.rounds", r.rounds()),
            rows.whole("meet.finalists", r.finalists()),
            Columns.word(MeetRules.FinalOrder.class, "order of the last rounds", rows.word("meet.final_order", r.order().name())),
            Columns.word(MeasureRule.class, "rule of measuring", rows.word("meet.measure", r.measure().name())),
            rows.whole("meet.trial_seconds", r.trialSeconds())));
  }

  static void keep(Handle h, MeetSettings s) {
    SettingRows.keep(h, "jump.class_threshold", s.jump().classThreshold(), POINTS);
    SettingRows.keep(h, "jump.rhythm", s.runUp().rhythm_m(), METRES);
    SettingRows.keep(h, "jump.check_steps", s.runUp().checkSteps(), COUNT);
    SettingRows.keep(h, "jump.early_step", s.runUp().earlyStep(), COUNT);
    SettingRows.keep(h, "jump.no_mark_below", s.aim().noMarkBelow_m(), METRES);
    SettingRows.keep(h, "meet.rival_spread", s.aim().rivalSd_m(), METRES);
    SettingRows.keep(h, "meet.rival_fouls", s.aim().rivalFouls(), SHARE);
    SettingRows.keep(h, "meet.first_rounds", s.rules().firstRounds(), COUNT);
    SettingRows.keep(h, "meet.rounds", s.rules().rounds(), COUNT);
    SettingRows.keep(h, "meet.finalists", s.rules().finalists(), COUNT);
    SettingRows.keep(h, "meet.final_order", s.rules().order().name());
    SettingRows.keep(h, "meet.measure", s.rules().measure().name());
    SettingRows.keep(h, "meet.trial_seconds", s.rules().trialSeconds(), SECONDS);
  }
}

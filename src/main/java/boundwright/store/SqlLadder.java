package boundwright.store;

import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateAnswer;
import boundwright.readiness.GateRules;
import boundwright.readiness.LadderRepository;
import boundwright.readiness.RungDecision;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;

/** Where each athlete stands on the ladders, and who decided it, in the database. */
final class SqlLadder implements LadderRepository {
  private static final String COUNT = "1";
  private static final String SHARE = "1";
  private static final String DAYS = "d";
  private static final String LENGTH = "m";
  private static final int OLD_DAYS = 21;
  private static final double LEAST_ERROR = 0.001;

  private final Database database;

  SqlLadder(Database database) {
    this.database = database;
  }

  private record Rung(DrillFamily family, int steps) {}

  @Override
  public Map<DrillFamily, Integer> rungs(long athleteId) {
    Map<DrillFamily, Integer> out = new EnumMap<>(DrillFamily.class);
    database
        .read(
            h ->
                h.createQuery("SELECT family, rung FROM family_rung WHERE athlete_id = :athlete")
                    .bind("athlete", athleteId)
                    .map((r, c) -> new Rung(Columns.word(DrillFamily.class, "family of drills", r.getString("family")), r.getInt("rung")))
                    .list())
        .forEach(rung -> out.put(rung.family(), rung.steps()));
    return out;
  }

  @Override
  public Map<Long, Map<DrillFamily, Integer>> rungs() {
    return database.read(
        h ->
            h.createQuery("SELECT athlete_id, family, rung FROM family_rung")
                .reduceRows(
                    new HashMap<Long, Map<DrillFamily, Integer>>(),
                    (all, r) -> {
                      DrillFamily family = Columns.word(DrillFamily.class, "family of drills", r.getColumn("family", String.class));
                      all.computeIfAbsent(r.getColumn("athlete_id", Long.class), id -> new EnumMap<>(DrillFamily.class))
                          .put(family, r.getColumn("rung", Integer.class));
                      return all;
                    }));
  }

  @Override
  public void keep(RungDecision decision) {
    database.write(
        h -> {
          h.createUpdate(
                  "INSERT INTO rung_decision (athlete_id, family, date, from_rung, to_rung, gate, reason)"
                      + " VALUES (:athlete, :family, :date, :from, :to, :gate, :reason)")
              .bind("athlete", decision.athleteId())
              .bind("family", decision.family().name())
              .bind("date", decision.date().toString())
              .bind("from", decision.from())
              .bind("to", decision.to())
              .bind("gate", decision.gate().name())
              .bind("reason", decision.reason())
              .execute();
          return h.createUpdate("INSERT INTO family_rung (athlete_id, family, rung) VALUES (:athlete, :family, :rung)"
                      + " ON CONFLICT (athlete_id, family) DO UPDATE SET rung = excluded.rung")
              .bind("athlete", decision.athleteId())
              .bind("family", decision.family().name())
              .bind("rung", decision.to())
              .execute();
        });
  }

  @Override
  public List<RungDecision> decisions(long athleteId, int most) {
    return database.read(
        h ->
            h.createQuery(
                    "SELECT id, family, date, from_rung, to_rung, gate, reason FROM rung_decision"
                        + " WHERE athlete_id = :athlete ORDER BY date DESC, id DESC LIMIT :most")
                .bind("athlete", athleteId)
                .bind("most", most)
                .map(
                    (r, c) ->
                        new RungDecision(
                            r.getLong("id"),
                            athleteId,
                            Columns.word(DrillFamily.class, "family of drills", r.getString("family")),
                            LocalDate.parse(r.getString("date")),
                            r.getInt("from_rung"),
                            r.getInt("to_rung"),
                            Columns.word(GateAnswer.Decision.class, "answer of the gate", r.getString("gate")),
                            r.getString("reason")))
                .list());
  }

  @Override
  public GateRules rules() {
    SettingRows rows = database.read(SettingRows::read);
    GateRules.Clean c = GateRules.DEFAULT.clean();
    GateRules.Stay t = GateRules.DEFAULT.stay();
    GateRules.Loss l = GateRules.DEFAULT.loss();
    GateRules.Speed v = GateRules.DEFAULT.speed();
    GateRules.Fading f = GateRules.DEFAULT.fading();
    int sessions = rows.whole("gate.sessions", 0);
    int days = rows.whole("gate.days", c.days());
    // kept before sessions counted: the old default was written whenever anything was kept
    boolean oldDays = sessions == 0 && days == OLD_DAYS;
    // a coach who asked to be surer than we ask now keeps that
    double oldError = Math.max(LEAST_ERROR, 1 - rows.number("gate.longer_chance", 0));
    return new GateRules(
        new GateRules.Clean(
            oldDays ? c.days() : days,
            rows.whole("gate.reps", c.reps()),
            sessions == 0 ? c.sessions() : sessions,
            rows.number("gate.not_share", c.notShare()),
            rows.number("gate.stay_error", c.stayError()),
            rows.number("gate.share_above", c.shareAbove()),
            rows.number("gate.share_chance", c.shareChance()),
            rows.whole("gate.pass_days", c.passDays()),
            rows.whole("gate.pass_day_reps", c.passDayReps()),
            rows.number("gate.pass_day_share", c.passDayShare())),
        new GateRules.Stay(
            rows.whole("gate.stay_days_short", t.shortDays()), rows.whole("gate.stay_days_long", t.longDays()),
            rows.whole("gate.break_days", t.breakDays())),
        new GateRules.Loss(
            rows.whole("gate.loss_sessions", l.sessions()), rows.whole("gate.go_back_reps", l.reps()), rows.number("gate.loss_error", l.error()),
            rows.number("gate.leg_faults", l.legFaults())),
        new GateRules.Speed(
            rows.number("gate.speed_error", Math.min(v.error(), oldError)), rows.number("gate.least_gain", v.leastGain())),
        new GateRules.Fading(
            rows.number("gate.fade", f.most()), rows.number("gate.fade_sure", f.sure()), rows.number("gate.late_share", f.lateShare())));
  }

  @Override
  public void keep(GateRules rules) {
    database.write(
        h -> {
          keep(h, rules);
          return rules;
        });
  }

  private static void keep(Handle h, GateRules rules) {
    GateRules.Clean c = rules.clean();
    SettingRows.keep(h, "gate.days", c.days(), DAYS);
    SettingRows.keep(h, "gate.reps", c.reps(), COUNT);
    SettingRows.keep(h, "gate.sessions", c.sessions(), COUNT);
    SettingRows.keep(h, "gate.not_share", c.notShare(), SHARE);
    SettingRows.keep(h, "gate.stay_error", c.stayError(), SHARE);
    SettingRows.keep(h, "gate.share_above", c.shareAbove(), SHARE);
    SettingRows.keep(h, "gate.share_chance", c.shareChance(), SHARE);
    SettingRows.keep(h, "gate.pass_days", c.passDays(), DAYS);
    SettingRows.keep(h, "gate.pass_day_reps", c.passDayReps(), COUNT);
    SettingRows.keep(h, "gate.pass_day_share", c.passDayShare(), SHARE);
    SettingRows.keep(h, "gate.stay_days_short", rules.stay().shortDays(), DAYS);
    SettingRows.keep(h, "gate.stay_days_long", rules.stay().longDays(), DAYS);
    SettingRows.keep(h, "gate.break_days", rules.stay().breakDays(), DAYS);
    SettingRows.keep(h, "gate.loss_sessions", rules.loss().sessions(), COUNT);
    SettingRows.keep(h, "gate.go_back_reps", rules.loss().reps(), COUNT);
    SettingRows.keep(h, "gate.loss_error", rules.loss().error(), SHARE);
    SettingRows.keep(h, "gate.leg_faults", rules.loss().legFaults(), SHARE);
    SettingRows.keep(h, "gate.speed_error", rules.speed().error(), SHARE);
    SettingRows.keep(h, "gate.least_gain", rules.speed().leastGain(), LENGTH);
    SettingRows.keep(h, "gate.fade", rules.fading().most(), SHARE);
    SettingRows.keep(h, "gate.fade_sure", rules.fading().sure(), SHARE);
    SettingRows.keep(h, "gate.late_share", rules.fading().lateShare(), SHARE);
  }
}

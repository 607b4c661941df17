package boundwright.store;

import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateAnswer;
import boundwright.readiness.GateRules;
import boundwright.readiness.LadderRepository;
import boundwright.readiness.RungDecision;
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
          return h.createUpdate("INSERT OR REPLACE INTO family_rung (athlete_id, family, rung) VALUES (:athlete, :family, :rung)")
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
    GateRules d = GateRules.DEFAULT;
    return new GateRules(
        rows.whole("gate.days", d.days()),
        rows.whole("gate.reps", d.reps()),
        rows.number("gate.share_above", d.shareAbove()),
        rows.number("gate.share_chance", d.shareChance()),
        rows.whole("gate.pass_days", d.passDays()),
        rows.whole("gate.pass_day_reps", d.passDayReps()),
        rows.number("gate.pass_day_share", d.passDayShare()),
        rows.number("gate.longer_chance", d.longerChance()),
        rows.number("gate.fade", d.fade()),
        rows.number("gate.late_share", d.lateShare()),
        rows.whole("gate.go_back_reps", d.goBackReps()));
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
    SettingRows.keep(h, "gate.days", rules.days(), DAYS);
    SettingRows.keep(h, "gate.reps", rules.reps(), COUNT);
    SettingRows.keep(h, "gate.share_above", rules.shareAbove(), SHARE);
    SettingRows.keep(h, "gate.share_chance", rules.shareChance(), SHARE);
    SettingRows.keep(h, "gate.pass_days", rules.passDays(), DAYS);
    SettingRows.keep(h, "gate.pass_day_reps", rules.passDayReps(), COUNT);
    SettingRows.keep(h, "gate.pass_day_share", rules.passDayShare(), SHARE);
    SettingRows.keep(h, "gate.longer_chance", rules.longerChance(), SHARE);
    SettingRows.keep(h, "gate.fade", rules.fade(), SHARE);
    SettingRows.keep(h, "gate.late_share", rules.lateShare(), SHARE);
    SettingRows.keep(h, "gate.go_back_reps", rules.goBackReps(), COUNT);
  }
}

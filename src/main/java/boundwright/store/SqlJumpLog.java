package boundwright.store;

import boundwright.jump.JumpEntry;
import boundwright.jump.JumpLog;
import boundwright.jump.JumpSettings;
import boundwright.jump.MeasuredContact;
import boundwright.jump.MeasuredJump;
import boundwright.jump.Phase;
import boundwright.jump.Phases;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Measured jumps in the database. */
final class SqlJumpLog implements JumpLog {
  private static final String JUMP =
      "SELECT id, athlete_id, date, approach_steps, hop_m, step_m, jump_m, toe_to_board_m, hop_from, note FROM measured_jump ";
  private static final String CONTACT =
      "SELECT jump_id, place, vx_in_mps, vx_out_mps, touchdown_vy_mps, take_off_vy_mps, take_off_height_m, touchdown_height_m, ground_m"
          + " FROM jump_contact JOIN measured_jump ON measured_jump.id = jump_id ";
  private static final String CONTACTS_IN_ORDER = "ORDER BY jump_id, place";

  private final Database database;

  SqlJumpLog(Database database) {
    this.database = database;
  }

  /** One row of a jump's contacts. */
  private record Contact(long jump, MeasuredContact contact, MeasuredJump.Body body) {}

  @Override
  public JumpEntry add(JumpEntry jump) {
    return database.write(
        h -> {
          Phases p = jump.phases();
          long id =
              JumpRows.number(
                  h.createUpdate(
                          "INSERT INTO measured_jump (athlete_id, date, approach_steps, hop_m, step_m, jump_m, toe_to_board_m, hop_from, note)"
                              + " VALUES (:athlete, :date, :steps, :hop, :step, :jump, :toe, :from, :note)")
                      .bind("athlete", jump.athleteId())
                      .bind("date", jump.date().toString())
                      .bind("steps", jump.steps())
                      .bind("hop", p.hop_m())
                      .bind("step", p.step_m())
                      .bind("jump", p.jump_m())
                      .bind("toe", p.toeToBoard_m())
                      .bind("from", p.from().name())
                      .bind("note", jump.note()));
          MeasuredJump speeds = jump.speeds();
          if (speeds != null) {
            contacts(h, id, speeds);
          }
          return jump.withId(id);
        });
  }

  private static void contacts(Handle h, long jump, MeasuredJump speeds) {
    for (int i = 0; i < 3; i++) {
      MeasuredContact c = speeds.contacts().get(i);
      MeasuredJump.Body b = speeds.bodies().get(i);
      h.createUpdate("INSERT INTO jump_contact VALUES (:jump, :place, :in, :out, :down, :up, :high, :low, :ground)")
          .bind("jump", jump)
          .bind("place", i + 1)
          .bind("in", c.vxIn())
          .bind("out", c.vxOut())
          .bind("down", c.touchdownVy())
          .bind("up", c.takeOffVy())
          .bind("high", b.takeOffHeight_m())
          .bind("low", b.touchdownHeight_m())
          .bind("ground", b.ground_m())
          .execute();
    }
  }

  @Override
  public List<JumpEntry> jumps(long athleteId) {
    return database.read(h -> jumps(h, athleteId));
  }

  private static List<JumpEntry> jumps(Handle h, long athleteId) {
    List<Contact> contacts =
        h.createQuery(CONTACT + JumpRows.OF_ATHLETE + CONTACTS_IN_ORDER).bind("athlete", athleteId).map((r, c) -> contact(r)).list();
    Map<Long, List<Contact>> byJump = byJump(contacts);
    return h.createQuery(JUMP + JumpRows.OF_ATHLETE + JumpRows.IN_ORDER).bind("athlete", athleteId).map((r, c) -> jump(r, byJump)).list();
  }

  @Override
  public Map<Long, List<JumpEntry>> jumpsWithSpeeds() {
    return database.read(
        h -> {
          Map<Long, List<Contact>> byJump = byJump(h.createQuery(CONTACT + CONTACTS_IN_ORDER).map((r, c) -> contact(r)).list());
          Map<Long, List<JumpEntry>> out = new LinkedHashMap<>();
          h.createQuery(JUMP + "WHERE id IN (SELECT jump_id FROM jump_contact) ORDER BY athlete_id, date, id")
              .map((r, c) -> jump(r, byJump))
              .forEach(jump -> out.computeIfAbsent(jump.athleteId(), id -> new ArrayList<>()).add(jump));
          return out;
        });
  }

  private static Map<Long, List<Contact>> byJump(List<Contact> contacts) {
    Map<Long, List<Contact>> out = new LinkedHashMap<>();
    contacts.forEach(c -> out.computeIfAbsent(c.jump(), id -> new ArrayList<>()).add(c));
    return out;
  }

  @Override
  public Optional<JumpEntry> removeJump(long athleteId, long id) {
    return database.write(
        h -> {
          Optional<JumpEntry> there = jumps(h, athleteId).stream().filter(j -> j.id() == id).findFirst();
          there.ifPresent(j -> JumpRows.delete(h, "measured_jump", id));
          return there;
        });
  }

  private static Contact contact(ResultSet r) throws SQLException {
    return new Contact(
        r.getLong("jump_id"),
        new MeasuredContact(
            Phase.IN_ORDER.get(r.getInt("place") - 1),
            r.getDouble("vx_in_mps"),
            r.getDouble("vx_out_mps"),
            r.getDouble("touchdown_vy_mps"),
            r.getDouble("take_off_vy_mps")),
        new MeasuredJump.Body(r.getDouble("take_off_height_m"), r.getDouble("touchdown_height_m"), r.getDouble("ground_m")));
  }

  private static JumpEntry jump(ResultSet r, Map<Long, List<Contact>> contacts) throws SQLException {
    long id = r.getLong("id");
    List<Contact> own = contacts.getOrDefault(id, List.of());
    Double toe = Columns.number(r, "toe_to_board_m");
    return new JumpEntry(
        id,
        r.getLong("athlete_id"),
        LocalDate.parse(r.getString("date")),
        Columns.whole(r, "approach_steps"),
        new Phases(
            r.getDouble("hop_m"),
            r.getDouble("step_m"),
            r.getDouble("jump_m"),
            toe,
            Columns.word(Phases.From.class, "start of the hop", r.getString("hop_from"))),
        own.isEmpty() ? null : new MeasuredJump(own.stream().map(Contact::contact).toList(), own.stream().map(Contact::body).toList(), toe),
        r.getString("note"));
  }

  @Override
  public JumpSettings settings() {
    return database.read(h -> MeetRows.jump(SettingRows.read(h)));
  }
}

package boundwright.store;

import boundwright.athlete.Facility;
import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.MarkSettings;
import boundwright.runway.SettingsRepository;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * The coach's settings, a row each with value and unit, and the plan of the day, a row a drill. A setting that was never
 * kept (an older program did not know it) has its default.
 */
final class SqlSettings implements SettingsRepository {
  private static final String METRES = "m";
  private static final String SHARE = "1";

  private final Database database;

  SqlSettings(Database database) {
    this.database = database;
  }

  /** A number that is kept: its key, its unit and where it sits in the settings. */
  private enum Figure {
    CHANCE("marks.chance", SHARE, s -> s.marks().chance()),
    SAND_MARGIN("marks.sand_margin", METRES, s -> s.marks().sandMargin_m()),
    CLEAR_MARGIN("marks.clear_margin", METRES, s -> s.marks().clearMargin_m()),
    RUNWAY("facility.runway", METRES, s -> s.facility().runway_m()),
    PIT("facility.pit", METRES, s -> s.facility().pit_m()),
    FLAT("facility.flat", METRES, s -> s.facility().flat_m()),
    SET_CONTACTS("set.contacts", SHARE, CoachSettings::setContacts);

    private final String key;
    private final String unit;
    private final ToDoubleFunction<CoachSettings> of;

    Figure(String key, String unit, ToDoubleFunction<CoachSettings> of) {
      this.key = key;
      this.unit = unit;
      this.of = of;
    }
  }

  /** A word that is kept. */
  private enum Said {
    UNIT("unit", s -> s.unit().name()),
    PLACE("facility.name", s -> s.facility().name()),
    SURFACE("facility.surface", s -> s.facility().surface().name());

    private final String key;
    private final Function<CoachSettings, String> of;

    Said(String key, Function<CoachSettings, String> of) {
      this.key = key;
      this.of = of;
    }
  }

  private static final String PLAN_TITLE = "plan.title";
  private static final String INVENTED = "squad.invented";

  private record Row(String key, @Nullable Double number, @Nullable String word) {}

  @Override
  public CoachSettings settings() {
    Map<String, Row> kept = new HashMap<>();
    database
        .read(
            h ->
                h.createQuery("SELECT key, number, word FROM setting")
                    .map((r, c) -> new Row(r.getString("key"), Columns.number(r, "number"), r.getString("word")))
                    .list())
        .forEach(row -> kept.put(row.key(), row));
    return new CoachSettings(
        Columns.word(LengthUnit.class, "unit", word(kept, Said.UNIT)),
        new MarkSettings(number(kept, Figure.CHANCE), number(kept, Figure.SAND_MARGIN), number(kept, Figure.CLEAR_MARGIN)),
        new Facility(
            word(kept, Said.PLACE),
            number(kept, Figure.RUNWAY),
            number(kept, Figure.PIT),
            number(kept, Figure.FLAT),
            Columns.word(Surface.class, "surface", word(kept, Said.SURFACE))),
        (int) number(kept, Figure.SET_CONTACTS));
  }

  private static double number(Map<String, Row> kept, Figure figure) {
    Row row = kept.get(figure.key);
    return row == null || row.number() == null ? figure.of.applyAsDouble(CoachSettings.DEFAULT) : row.number();
  }

  private static String word(Map<String, Row> kept, Said said) {
    Row row = kept.get(said.key);
    return row == null || row.word() == null ? said.of.apply(CoachSettings.DEFAULT) : row.word();
  }

  @Override
  public void keep(CoachSettings settings) {
    database.write(
        h -> {
          for (Figure f : Figure.values()) {
            put(h, f.key, f.of.applyAsDouble(settings), f.unit, null);
          }
          for (Said s : Said.values()) {
            put(h, s.key, null, null, s.of.apply(settings));
          }
          return settings;
        });
  }

  @Override
  public DayPlan plan() {
    return database.read(
        h ->
            new DayPlan(
                h.createQuery("SELECT word FROM setting WHERE key = :key").bind("key", PLAN_TITLE).mapTo(String.class).findOne().orElse(""),
                h.createQuery("SELECT sequence, steps, sets, reps, in_sand FROM drill ORDER BY place")
                    .map(
                        (r, c) ->
                            new Drill(
                                Sequence.parse(r.getString("sequence")),
                                Columns.whole(r, "steps"),
                                r.getInt("sets"),
                                r.getInt("reps"),
                                r.getBoolean("in_sand")))
                    .list()));
  }

  @Override
  public void keep(DayPlan plan) {
    database.write(
        h -> {
          put(h, PLAN_TITLE, null, null, plan.title());
          h.execute("DELETE FROM drill");
          List<Drill> drills = plan.drills();
          for (int i = 0; i < drills.size(); i++) {
            Drill d = drills.get(i);
            h.createUpdate(
                    "INSERT INTO drill (place, sequence, steps, sets, reps, in_sand)"
                        + " VALUES (:place, :sequence, :steps, :sets, :reps, :sand)")
                .bind("place", i + 1)
                .bind("sequence", d.sequence().text())
                .bind("steps", d.steps())
                .bind("sets", d.sets())
                .bind("reps", d.reps())
                .bind("sand", d.inSand() ? 1 : 0)
                .execute();
          }
          return plan;
        });
  }

  /** Whether the squad in this store was invented by {@link DemoSquad}. */
  boolean invented() {
    return database.read(
        h -> h.createQuery("SELECT count(*) FROM setting WHERE key = :key").bind("key", INVENTED).mapTo(Integer.class).one() > 0);
  }

  /** Marks the store for good as holding an invented squad. */
  void markInvented() {
    database.write(h -> put(h, INVENTED, null, null, "yes"));
  }

  private static int put(Handle h, String key, @Nullable Double number, @Nullable String unit, @Nullable String word) {
    return h.createUpdate("INSERT OR REPLACE INTO setting (key, number, unit, word) VALUES (:key, :number, :unit, :word)")
        .bind("key", key)
        .bind("number", number)
        .bind("unit", unit)
        .bind("word", word)
        .execute();
  }
}

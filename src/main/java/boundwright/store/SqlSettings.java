package boundwright.store;

import boundwright.athlete.Facility;
import boundwright.athlete.Surface;
import boundwright.demo.DemoSquad;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.MarkSettings;
import boundwright.runway.SettingsRepository;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** The coach's settings, a row each with value and unit, and the plan of the day, a row a drill. */
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

  @Override
  public CoachSettings settings() {
    SettingRows kept = database.read(SettingRows::read);
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

  private static double number(SettingRows kept, Figure figure) {
    return kept.number(figure.key, figure.of.applyAsDouble(CoachSettings.DEFAULT));
  }

  private static String word(SettingRows kept, Said said) {
    return kept.word(said.key, said.of.apply(CoachSettings.DEFAULT));
  }

  @Override
  public void keep(CoachSettings settings) {
    database.write(
        h -> {
          for (Figure f : Figure.values()) {
            SettingRows.keep(h, f.key, f.of.applyAsDouble(settings), f.unit);
          }
          for (Said s : Said.values()) {
            SettingRows.keep(h, s.key, s.of.apply(settings));
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
          SettingRows.keep(h, PLAN_TITLE, plan.title());
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
    database.write(
        h -> {
          SettingRows.keep(h, INVENTED, "yes");
          return true;
        });
  }
}

package boundwright.store;

import boundwright.athlete.Facility;
import boundwright.athlete.Surface;
import boundwright.demo.DemoSquad;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.MarkSettings;
import boundwright.runway.SettingsRepository;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** The coach's settings, a row each with value and unit, and the plans of the days. */
final class SqlSettings implements SettingsRepository {
  private static final String METRES = "m";
  private static final String SHARE = "1";

  private final Database database;
  private final Clock clock;

  /** {@code clock} tells which day's plan says the place. */
  SqlSettings(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
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

  private static final String INVENTED = "squad.invented";

  @Override
  public CoachSettings settings() {
    return settings(LocalDate.now(clock));
  }

  @Override
  public CoachSettings settings(LocalDate day) {
    return database.read(
        h -> {
          CoachSettings kept = of(SettingRows.read(h));
          return SqlPlans.place(h, day)
              .map(p -> new CoachSettings(kept.unit(), kept.marks(), p.at(kept.facility()), kept.setContacts()))
              .orElse(kept);
        });
  }

  @Override
  public CoachSettings kept() {
    return of(database.read(SettingRows::read));
  }

  private static CoachSettings of(SettingRows kept) {
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
    return plan(LocalDate.now(clock));
  }

  @Override
  public DayPlan plan(LocalDate day) {
    return database.read(h -> SqlPlans.own(h, day).orElseGet(() -> SqlPlans.usual(h)));
  }

  @Override
  public DayPlan usual() {
    return database.read(SqlPlans::usual);
  }

  @Override
  public boolean hasUsual() {
    return database.read(SqlPlans::hasUsual);
  }

  @Override
  public Optional<DayPlan> own(LocalDate day) {
    return database.read(h -> SqlPlans.own(h, day));
  }

  @Override
  public void keep(DayPlan plan) {
    database.write(h -> SqlPlans.keepUsual(h, plan));
  }

  @Override
  public void keep(LocalDate day, DayPlan plan) {
    database.write(h -> SqlPlans.keep(h, day, plan));
  }

  @Override
  public void drop(LocalDate day) {
    database.write(h -> SqlPlans.drop(h, day));
  }

  @Override
  public List<LocalDate> planned(LocalDate from, LocalDate to) {
    return database.read(h -> SqlPlans.planned(h, from, to));
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

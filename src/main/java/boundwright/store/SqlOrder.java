package boundwright.store;

import boundwright.athlete.Surface;
import boundwright.season.order.OrderRepository;
import boundwright.season.order.OrderSettings;
import boundwright.season.order.RestRule;
import boundwright.store.engine.Database;
import boundwright.store.rows.Columns;
import boundwright.store.rows.SettingRows;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** The settings of a session's order, a row each with value and unit, and the order of one day as the athletes' numbers in a row. */
final class SqlOrder implements OrderRepository {
  private static final String SECONDS = "s";
  private static final String COUNT = "1";
  private static final String WATCH = "order.watch";
  private static final String FLAT_SURFACE = "order.flat_surface";
  private static final String ORDER = "order.of_day";

  private final Database database;

  SqlOrder(Database database) {
    this.database = database;
  }

  private enum Figure {
    PITS("order.pits", COUNT, OrderSettings::pits),
    LANES("order.lanes", COUNT, OrderSettings::lanes),
    FLAT_LANES("order.flat_lanes", COUNT, OrderSettings::flatLanes),
    COACHES("order.coaches", COUNT, OrderSettings::coaches),
    MINUTES("order.minutes", "min", OrderSettings::minutes),
    STEP("order.step", SECONDS, OrderSettings::step_s),
    CONTACT("order.contact", SECONDS, OrderSettings::contact_s),
    CLEAR_SAND("order.clear_sand", SECONDS, OrderSettings::clearSand_s),
    CLEAR_FLAT("order.clear_flat", SECONDS, OrderSettings::clearFlat_s),
    SAY("order.say", SECONDS, OrderSettings::say_s),
    TIMES_WORK("order.rest_times_work", COUNT, s -> s.rest().timesWork()),
    STANDING("order.rest_standing", SECONDS, s -> s.rest().standing_s()),
    FOUR("order.rest_four", SECONDS, s -> s.rest().four_s()),
    EIGHT("order.rest_eight", SECONDS, s -> s.rest().eight_s()),
    FULL("order.rest_full", SECONDS, s -> s.rest().full_s());

    private final String key;
    private final String unit;
    private final ToDoubleFunction<OrderSettings> of;

    Figure(String key, String unit, ToDoubleFunction<OrderSettings> of) {
      this.key = key;
      this.unit = unit;
      this.of = of;
    }

    double in(SettingRows rows) {
      return rows.number(key, of.applyAsDouble(OrderSettings.DEFAULT));
    }

    int whole(SettingRows rows) {
      return (int) in(rows);
    }
  }

  @Override
  public OrderSettings orderSettings() {
    SettingRows rows = database.read(SettingRows::read);
    return new OrderSettings(
        Figure.PITS.whole(rows), Figure.LANES.whole(rows), Figure.FLAT_LANES.whole(rows),
        Columns.word(Surface.class, "surface of the level ground", rows.word(FLAT_SURFACE, OrderSettings.DEFAULT.flatSurface().name())),
        Figure.COACHES.whole(rows),
        Columns.word(OrderSettings.Watch.class, "reps that are watched", rows.word(WATCH, OrderSettings.DEFAULT.watch().name())),
        Figure.MINUTES.whole(rows), Figure.STEP.in(rows), Figure.CONTACT.in(rows), Figure.CLEAR_SAND.whole(rows),
        Figure.CLEAR_FLAT.whole(rows), Figure.SAY.whole(rows),
        new RestRule(
            Figure.TIMES_WORK.in(rows), Figure.STANDING.whole(rows), Figure.FOUR.whole(rows), Figure.EIGHT.whole(rows), Figure.FULL.whole(rows)));
  }

  @Override
  public void keep(OrderSettings settings) {
    database.write(
        h -> {
          for (Figure f : Figure.values()) {
            SettingRows.keep(h, f.key, f.of.applyAsDouble(settings), f.unit);
          }
          SettingRows.keep(h, WATCH, settings.watch().name());
          SettingRows.keep(h, FLAT_SURFACE, settings.flatSurface().name());
          return settings;
        });
  }

  @Override
  public List<Long> order(LocalDate day) {
    String[] kept = database.read(SettingRows::read).word(ORDER, "").split(" ", -1);
    List<Long> out = new ArrayList<>();
    if (kept[0].equals(day.toString())) {
      for (int i = 1; i < kept.length; i++) {
        if (kept[i].matches("\\d{1,18}")) {
          out.add(Long.parseLong(kept[i]));
        }
      }
    }
    return List.copyOf(out);
  }

  @Override
  public void keep(LocalDate day, List<Long> athletes) {
    String row = day + athletes.stream().map(a -> " " + a).collect(Collectors.joining());
    database.write(
        h -> {
          SettingRows.keep(h, ORDER, row);
          return row;
        });
  }
}

package boundwright.season.order;

import java.time.LocalDate;
import java.util.List;

/** Where the settings of a session's order and the order of a day are kept. Writes are on disk when they return. */
public interface OrderRepository {
  /** The settings; defaults if none were kept. */
  OrderSettings orderSettings();

  /** Keeps the settings. */
  void keep(OrderSettings settings);

  /** Athletes in the order in which their reps were planned for a day; empty if none is kept for it. */
  List<Long> order(LocalDate day);

  /** Keeps the order of a day, in place of that of any other; an empty one is none. */
  void keep(LocalDate day, List<Long> athletes);
}

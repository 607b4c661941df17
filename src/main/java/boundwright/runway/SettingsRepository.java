package boundwright.runway;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Where the coach's settings and the plans of the days are kept. Writes are on disk when they return. */
public interface SettingsRepository {
  /** The settings as they hold today: the place is that of today's plan where it has one. Defaults if none were kept. */
  CoachSettings settings();

  /** As {@link #settings()}, of another day. */
  CoachSettings settings(LocalDate day);

  /** The settings as they were kept, whatever today's plan says of the place. */
  CoachSettings kept();

  /** Keeps the settings. */
  void keep(CoachSettings settings);

  /** The squad's plan of today. */
  DayPlan plan();

  /** The plan of a day: its own, or the usual one. */
  DayPlan plan(LocalDate day);

  /** The plan that holds on days without one of their own; empty drills if none was kept. */
  DayPlan usual();

  /** Whether a usual plan was ever kept. */
  boolean hasUsual();

  /** The plan that a day has of its own. */
  Optional<DayPlan> own(LocalDate day);

  /** Keeps the usual plan. */
  void keep(DayPlan plan);

  /** Keeps the plan of one day. */
  void keep(LocalDate day, DayPlan plan);

  /** Takes a day's own plan out, so that it has the usual one; nothing happens if it has none. */
  void drop(LocalDate day);

  /** The days with a plan of their own, from the first to the last asked for, both included, in order. */
  List<LocalDate> planned(LocalDate from, LocalDate to);
}

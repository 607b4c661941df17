package boundwright.runway;

/** Where the coach's settings and the plan of the day are kept. Writes are on disk when they return. */
public interface SettingsRepository {
  /** The settings, or the defaults if none were kept. */
  CoachSettings settings();

  /** Keeps the settings. */
  void keep(CoachSettings settings);

  /** The squad's plan of the day; empty drills if none was kept. */
  DayPlan plan();

  /** Keeps the plan of the day. */
  void keep(DayPlan plan);
}

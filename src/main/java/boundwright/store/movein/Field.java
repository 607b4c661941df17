package boundwright.store.movein;

import java.util.List;
import java.util.Locale;

/** What a column can be. The other names are common ones, tried when a file is seen for the first time (judgement); the coach sees and changes the choice. */
public enum Field {
  /** Name. */
  NAME(Kind.ROSTER, "name", "Name", true, "athlete", "full name", "athlete name", "first and last name"),
  /** Birth date. */
  BORN(Kind.ROSTER, "born", "Birth date", false, "birth date", "birthdate", "date of birth", "dob", "birthday"),
  /** Sex. */
  SEX(Kind.ROSTER, "sex", "Sex", false, "gender", "m/f", "f/m"),
  /** Level. */
  LEVEL(Kind.ROSTER, "level", "Level", false, "standard", "stage"),
  /** Take-off leg. */
  LEG(Kind.ROSTER, "leg", "Take-off leg", false, "take-off leg", "take-off foot", "takeoff leg", "takeoff foot", "foot", "jumping leg"),
  /** Approach steps. */
  STEPS(Kind.ROSTER, "steps", "Approach steps", false, "approach", "approach steps", "run-up steps", "approach_steps"),
  /** Group. */
  GROUP(Kind.ROSTER, "group", "Group", false, "squad", "team", "class"),

  /** Day of a rep. */
  REP_DATE(Kind.REPS, "date", "Date", true, "day"),
  /** Whose rep. */
  REP_ATHLETE(Kind.REPS, "athlete", "Athlete", true, "name"),
  /** Sequence. */
  SEQUENCE(Kind.REPS, "sequence", "Sequence", true, "drill", "contacts"),
  /** Approach steps of a rep. */
  REP_STEPS(Kind.REPS, "approach_steps", "Approach steps", true, "steps", "approach"),
  /** Surface. */
  SURFACE(Kind.REPS, "surface", "Surface", true, "ground"),
  /** Footprints. */
  FOOTPRINTS(Kind.REPS, "footprints_m", "Footprints", false, "footprints"),
  /** Landing. */
  LANDING(Kind.REPS, "landing_m", "Landing", false, "landing", "distance"),
  /** Outcome. */
  OUTCOME(Kind.REPS, "outcome", "Outcome", false, "result"),
  /** Mark. */
  MARK(Kind.REPS, "mark_to_sand_m", "Mark to the sand", false, "mark", "mark to sand"),
  /** Faults. */
  FAULTS(Kind.REPS, "faults", "Faults", false, "fault"),

  /** Whose result. */
  RESULT_ATHLETE(Kind.RESULTS, "athlete", "Athlete", true, "name", "athlete name"),
  /** Day of the meet. */
  MEET_DATE(Kind.RESULTS, "date", "Date", true, "day", "meet date"),
  /** Distance, or foul, or pass. */
  DISTANCE(Kind.RESULTS, "distance", "Distance", true, "mark", "result", "performance", "best", "distance (m)", "m"),
  /** Event. */
  EVENT(Kind.RESULTS, "event", "Event", false, "discipline"),
  /** Wind. */
  WIND(Kind.RESULTS, "wind", "Wind", false, "wind (m/s)", "m/s"),
  /** Name of the meet. */
  MEET(Kind.RESULTS, "meet", "Meet", false, "competition", "meeting", "place", "venue", "location"),
  /** Round. */
  ROUND(Kind.RESULTS, "round", "Round", false, "attempt", "trial");

  private final Kind kind;
  private final String key;
  private final String label;
  private final boolean needed;
  private final List<String> names;

  Field(Kind kind, String key, String label, boolean needed, String... names) {
    this.kind = kind;
    this.key = key;
    this.label = label;
    this.needed = needed;
    this.names = List.of(names);
  }

  /** Of which kind of file. */
  public Kind kind() {
    return kind;
  }

  /** The word on the command line. */
  public String key() {
    return key;
  }

  /** As it is called on the screen. */
  public String label() {
    return label;
  }

  /** Whether a file must have it. */
  public boolean needed() {
    return needed;
  }

  /** Whether a column is called so. */
  boolean isCalled(String column) {
    String plain = column.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    return plain.equals(key) || plain.equals(label.toLowerCase(Locale.ROOT)) || names.contains(plain);
  }
}

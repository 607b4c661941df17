package boundwright.store.transfer;

import java.util.Map;
import java.util.Set;

/** Which tables go along with an athlete and which stay, and why; a test asks the database that no table is in neither. */
public final class Baggage {
  /** What belongs to the athlete, wherever they train. */
  public static final Set<String> GOES =
      Set.of(
          "athlete", "person", "consent", "body_measurement", "known_mark", "run_up", "family_rung", "rung_decision", "rep", "second_look", "test_score", "measured_jump",
          "jump_contact", "jump_distance", "long_jump", "run_jump", "run_through", "board_gap", "meet", "meet_entrant", "meet_attempt", "meet_beside", "care", "last_week", "pain", "medical_hold", "way_back", "way_back_step",
          "guard_override", "session_rating", "other_work", "season_start", "away", "clip", "clip_points", "clip_mark", "clip_correction", "contact_time");

  /** What stays, and why. */
  public static final Map<String, String> STAYS =
      Map.ofEntries(
          Map.entry("athlete_token", "another random name there: the old one is erased, and stays so after every restore"),
          Map.entry("learned", "worked out again from the reps"),
          Map.entry("tap", "what phones of the old club brought"),
          Map.entry("squad_group", "a group of the old club"),
          Map.entry("group_member", "a group of the old club"),
          Map.entry("season", "the old club's plan"),
          Map.entry("season_member", "the old club's plan"),
          Map.entry("season_member_before", "the old club's plan"),
          Map.entry("season_version", "the old club's plan"),
          Map.entry("season_year", "the old club's plan"),
          Map.entry("calendar_secret", "a secret: calendars get a new address"),
          Map.entry("session_film", "others are in it"),
          Map.entry("session_rep", "others are in its film"),
          Map.entry("import_file", "a file of the old club"),
          Map.entry("import_athlete", "a file of the old club"),
          Map.entry("import_rep", "a file of the old club"),
          Map.entry("import_filled", "a file of the old club"),
          Map.entry("import_member", "a file of the old club"),
          Map.entry("import_entrant", "a file of the old club"),
          Map.entry("import_attempt", "a file of the old club"));

  private Baggage() {}
}

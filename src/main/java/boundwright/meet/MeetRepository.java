package boundwright.meet;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What this part needs kept of meets. Every write is on disk when the method returns. */
public interface MeetRepository {
  /** All meets, newest day first. */
  List<MeetSheet> all();

  /** Meets from a day on with this athlete on their list, oldest day first. */
  List<MeetSheet> withAthlete(long athleteId, LocalDate from);

  /** The meet with this number. */
  Optional<MeetSheet> byId(long meetId);

  /** Stores a new meet with those on its list and no attempts, and returns it with its numbers. */
  MeetSheet add(MeetSheet meet);

  /**
   * Replaces name, day, competition, board, points and rules of the meet with the same number; the list and the attempts stay.
   *
   * @throws boundwright.quantity.RefusedException if it is not there
   */
  void update(MeetSheet meet);

  /** Takes a meet out with its list and all its attempts; nothing happens if it is not there. */
  void remove(long meetId);

  /**
   * Puts somebody at the end of the list and returns them with their number.
   *
   * @throws boundwright.quantity.RefusedException if they, or somebody of the same name, stand on it already
   */
  Entrant enter(long meetId, Entrant entrant);

  /**
   * Takes somebody from the list.
   *
   * @throws boundwright.quantity.RefusedException if they have attempts: take those back first
   */
  void withdraw(long meetId, long entrantId);

  /**
   * Keeps an attempt; one of the same entrant and round no longer counts, but comes back when this one is undone.
   *
   * @param attempt its athlete is replaced by the entrant's name
   * @throws boundwright.quantity.RefusedException if the entrant is not on the list or the rules have no such attempt
   */
  KeptAttempt add(long meetId, long entrantId, Attempt attempt, String note);

  /**
   * As {@link #add}, for one who may not have the meet as it is before them: if something else was kept of this attempt meanwhile,
   * nothing is replaced; what they entered is kept beside it ({@link #besides}) until the coach chooses.
   *
   * @return the attempt that counts now: this one, the very same that was there already, or the one that it is kept beside
   */
  KeptAttempt add(long meetId, long entrantId, Attempt attempt, String note, Hand hand);

  /** What waits for the coach to choose, oldest first. */
  List<Beside> besides(long meetId);

  /**
   * The coach's choice between two entries of an attempt.
   *
   * @param holds whether what was kept beside holds: then it is added and counts; otherwise it is dropped
   * @throws boundwright.quantity.RefusedException if it does not wait any more
   */
  void choose(long meetId, long besideId, boolean holds);

  /** Takes the attempt back that was entered last in this meet and returns it; empty without any. */
  Optional<KeptAttempt> undo(long meetId);

  /** Takes an attempt out for good, with what it had replaced; nothing happens if it is not there. */
  void removeAttempt(long meetId, long attemptId);

  /** All attempts that count of an athlete of the squad, oldest meet first. */
  List<AthleteAttempt> attemptsOf(long athleteId);

  /** The settings; the defaults if none were kept. */
  MeetSettings settings();

  /** Keeps the settings. */
  void keep(MeetSettings settings);

  /**
   * An attempt with the meet it belongs to.
   *
   * @param meetId which meet
   * @param meet its name
   * @param date its day
   * @param kept the attempt
   */
  record AthleteAttempt(long meetId, String meet, LocalDate date, KeptAttempt kept) {
    /** Official distance [m] as measured, or null. */
    public @Nullable Double distance_m() {
      return kept.attempt().distance_m();
    }
  }
}

package boundwright.flight;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.LongConsumer;

/**
 * The store as the learning needs it. Everything done inside one {@link #write} is on disk together, or not at all,
 * when it returns; a kill at any moment loses nothing that was answered.
 */
public interface RepStore {
  /** Runs {@code work} in one write transaction that no other writer overlaps. */
  <T> T write(Function<Writer, T> work);

  /** As {@link #write}, for what takes long: nobody else's answer waits for it. */
  <T> T writeLong(Function<Writer, T> work);

  /** The newest reps of an athlete, by date and then number, newest first. */
  List<Rep> recent(long athleteId, int most);

  /** The reps of an athlete from a day on, by date and then number, oldest first. */
  List<Rep> since(long athleteId, LocalDate from);

  /** All reps of an athlete by date and then number, oldest first. */
  List<Rep> inOrder(long athleteId);

  /** What was learned of an athlete so far; empty when nothing was, or when an older program wrote it. */
  Optional<Learned> learned(long athleteId);

  /** What was learned of these athletes up to the last rep, by number; those of whom nothing readable is kept are left out. */
  Map<Long, FlightModel> learnedNow(List<Long> athletes);

  /** Number of the squad's snapshot, 0 if none is kept. */
  long snapshotNumber();

  /** The squad's snapshot; empty if none is kept, or when an older program wrote it. */
  Optional<Snapshot> snapshot();

  /** How many reps everybody logged before a day. */
  long repsBefore(LocalDate day);

  /** A number for a snapshot that was never given before and is not given again. */
  long reserveSnapshot();

  /** Whether this thread is inside a {@link #write}, where nobody may be waited for. */
  boolean isWriting();

  /** How many transactions were kept that changed anybody's data; see {@link Writer#changedSince}. */
  long changes();

  /**
   * A snapshot that is kept.
   *
   * @param prior what it says
   * @param madeOn the day on which it was made
   * @param reps how many reps everybody had logged before
   */
  record Snapshot(SquadPrior prior, LocalDate madeOn, long reps) {}

  /**
   * What is kept of the learning.
   *
   * @param now the model after the last rep
   * @param dayStart the model before the first rep of the last day, so that undo need not learn everything again
   */
  record Learned(FlightModel now, FlightModel dayStart) {}

  /** The writing side, alive inside {@link RepStore#write} only. */
  interface Writer {
    /** Adds a rep and returns it with its number. */
    Rep add(Rep rep);

    /**
     * Adds many reps at once.
     *
     * @param numbers told the number of each, in whatever order
     */
    void addAll(List<Rep> reps, LongConsumer numbers);

    /** Takes a rep out; false if it was not there. */
    boolean remove(long repId);

    /** The rep with this number. */
    Optional<Rep> find(long repId);

    /** Gives a rep to another athlete; it keeps its number. */
    void hand(long repId, long athleteId);

    /** Keeps a rep's footprints and landing in place of what was kept before. */
    void measure(Rep rep);

    /** Keeps what was seen of a rep's technique in place of what was kept before. */
    void look(long repId, boolean judged, List<String> faults);

    /** As {@link RepStore#inOrder}, inside the transaction. */
    List<Rep> inOrder(long athleteId);

    /** As {@link RepStore#learned}, inside the transaction. */
    Optional<Learned> learned(long athleteId);

    /** Keeps what was learned in place of what was kept before. */
    void keep(long athleteId, Learned learned);

    /** Whose data changed since {@link RepStore#changes} said this. */
    Set<Long> changedSince(long changes);

    /**
     * Keeps a snapshot in place of the last one, unless somebody else did so meanwhile.
     *
     * @param before number of the snapshot that it replaces, 0 for none
     * @param made with a number from {@link RepStore#reserveSnapshot}
     * @return whether it was kept
     */
    boolean keepSnapshot(long before, Snapshot made);

    /** Forgets what was learned, so that it is learned again from the reps. */
    void forget(long athleteId);
  }
}

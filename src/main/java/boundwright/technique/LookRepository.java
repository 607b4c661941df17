package boundwright.technique;

import java.util.List;

/** What this part needs kept. Every write is on disk when the method returns. */
public interface LookRepository {
  /** Faults the coach added, by label. */
  List<Fault> ownFaults();

  /** Keeps a fault the coach added, replacing one with the same key. */
  void keep(Fault fault);

  /** Takes a fault out of the list; ticks already kept stay. */
  void removeFault(String key);

  /** What the coach teaches where schools differ. */
  Teaching teaching();

  /** Keeps what the coach teaches. */
  void keep(Teaching teaching);

  /** Keeps what a second observer saw on a rep, replacing what the same observer kept before. */
  void keep(SecondLook look);

  /** All second looks at an athlete's reps, by rep. */
  List<SecondLook> secondLooks(long athleteId);

  /**
   * What another observer saw on a rep that the coach judged too.
   *
   * @param repId which rep
   * @param observer name or initials, 1 to 40 characters
   * @param ticks what was seen wrong; none is clean
   */
  record SecondLook(long repId, String observer, List<FaultTick> ticks) {
    /** Refuses an empty observer. */
    public SecondLook {
      observer = observer.strip();
      ticks = List.copyOf(ticks);
      if (observer.isEmpty() || observer.length() > 40) {
        throw new boundwright.quantity.RefusedException(
            "An observer's name has 1 to 40 characters; this one has " + observer.length() + ". Initials will do.");
      }
    }
  }
}

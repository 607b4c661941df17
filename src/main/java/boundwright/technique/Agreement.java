package boundwright.technique;

import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Two observers who judged the same reps: how far they agree on each fault and on 'clean', how far on the number of faults,
 * and the reps on which they do not, to be talked over.
 *
 * @param reps how many both judged
 * @param clean agreement on 'clean or not'
 * @param faults agreement on each fault that either of them ticked, by key
 * @param counts the number of faults per rep as an intraclass correlation, or null when it cannot be told
 * @param disagreements where they differ, in the order of the reps
 */
public record Agreement(
    int reps, OnFault clean, List<OnFault> faults, @Nullable IntraclassCorrelation counts, List<Disagreement> disagreements) {
  /**
   * One rep as both saw it.
   *
   * @param repId of the rep
   * @param first what the first observer ticked
   * @param second what the second observer ticked
   */
  public record TwiceJudged(long repId, List<FaultTick> first, List<FaultTick> second) {
    /** Takes copies. */
    public TwiceJudged {
      first = List.copyOf(first);
      second = List.copyOf(second);
    }
  }

  /**
   * Agreement on one fault.
   *
   * @param key the fault, or {@code clean}
   * @param both reps in which both saw it
   * @param onlyFirst reps in which only the first saw it
   * @param onlySecond reps in which only the second saw it
   * @param neither reps in which neither saw it
   * @param kappa beyond chance, or null when both always said the same thing
   */
  public record OnFault(String key, int both, int onlyFirst, int onlySecond, int neither, @Nullable Kappa kappa) {
    /** In a sentence. */
    public String inWords() {
      return kappa == null
          ? "Both said the same of all " + (both + neither) + " reps, always the same thing: chance alone would do that too."
          : kappa.inWords();
    }
  }

  /** How they differ. */
  public enum Who {
    /** Only the first observer ticked it. */
    ONLY_FIRST("only the first observer saw it"),
    /** Only the second observer ticked it. */
    ONLY_SECOND("only the second observer saw it"),
    /** Both ticked it, on different contacts. */
    OTHER_CONTACT("both saw it, on different contacts");

    private final String label;

    Who(String label) {
      this.label = label;
    }

    /** In words. */
    public String label() {
      return label;
    }
  }

  /**
   * A rep and fault on which they differ.
   *
   * @param repId of the rep
   * @param key the fault
   * @param who how they differ
   */
  public record Disagreement(long repId, String key, Who who) {}

  /**
   * Compares two observers.
   *
   * @param reps each rep once
   * @throws RefusedException if there is no rep, or one is given twice
   */
  public static Agreement of(List<TwiceJudged> reps) {
    if (reps.isEmpty()) {
      throw new RefusedException("No rep was looked at by both observers. Look at some reps together, each with their own list.");
    }
    Set<Long> ids = new HashSet<>();
    Set<String> keys = new TreeSet<>();
    double[][] counts = new double[reps.size()][];
    List<Disagreement> disagreements = new ArrayList<>();
    for (int i = 0; i < reps.size(); i++) {
      TwiceJudged rep = reps.get(i);
      if (!ids.add(rep.repId())) {
        throw new RefusedException("Rep " + rep.repId() + " was given twice. Each rep counts once.");
      }
      Set<String> first = keysOf(rep.first());
      Set<String> second = keysOf(rep.second());
      Set<String> either = new TreeSet<>(first);
      either.addAll(second);
      keys.addAll(either);
      counts[i] = new double[] {first.size(), second.size()};
      for (String key : either) {
        if (!second.contains(key)) {
          disagreements.add(new Disagreement(rep.repId(), key, Who.ONLY_FIRST));
        } else if (!first.contains(key)) {
          disagreements.add(new Disagreement(rep.repId(), key, Who.ONLY_SECOND));
        } else if (contactsDiffer(rep, key)) {
          disagreements.add(new Disagreement(rep.repId(), key, Who.OTHER_CONTACT));
        }
      }
    }
    List<OnFault> faults = keys.stream().map(k -> onFault(k, reps)).toList();
    return new Agreement(reps.size(), onClean(reps), faults, correlation(counts).orElse(null), List.copyOf(disagreements));
  }

  /** Agreement on one fault, if either ticked it. */
  public Optional<OnFault> on(String key) {
    return faults.stream().filter(f -> f.key().equals(key)).findFirst();
  }

  private static Set<String> keysOf(List<FaultTick> ticks) {
    Set<String> keys = new HashSet<>();
    ticks.forEach(t -> keys.add(t.key()));
    return keys;
  }

  // A tick without a contact contradicts no contact.
  private static boolean contactsDiffer(TwiceJudged rep, String key) {
    Set<Integer> first = contacts(rep.first(), key);
    Set<Integer> second = contacts(rep.second(), key);
    return !first.isEmpty() && !second.isEmpty() && !first.equals(second);
  }

  private static Set<Integer> contacts(List<FaultTick> ticks, String key) {
    Set<Integer> contacts = new HashSet<>();
    for (FaultTick tick : ticks) {
      if (tick.key().equals(key) && tick.contact() != null) {
        contacts.add(tick.contact());
      }
    }
    return contacts;
  }

  private static OnFault onFault(String key, List<TwiceJudged> reps) {
    int[][] table = new int[2][2];
    for (TwiceJudged rep : reps) {
      table[keysOf(rep.first()).contains(key) ? 0 : 1][keysOf(rep.second()).contains(key) ? 0 : 1]++;
    }
    return onFault(key, table);
  }

  private static OnFault onClean(List<TwiceJudged> reps) {
    int[][] table = new int[2][2];
    for (TwiceJudged rep : reps) {
      table[rep.first().isEmpty() ? 0 : 1][rep.second().isEmpty() ? 0 : 1]++;
    }
    return onFault("clean", table);
  }

  private static OnFault onFault(String key, int[][] table) {
    int n = table[0][0] + table[0][1] + table[1][0] + table[1][1];
    boolean oneThing = table[0][0] == n || table[1][1] == n;
    return new OnFault(key, table[0][0], table[0][1], table[1][0], table[1][1], oneThing ? null : Kappa.of(table));
  }

  private static Optional<IntraclassCorrelation> correlation(double[][] counts) {
    boolean varies = false;
    for (double[] row : counts) {
      varies |= row[0] != counts[0][0] || row[1] != counts[0][0];
    }
    return counts.length >= 3 && varies ? Optional.of(IntraclassCorrelation.of(counts)) : Optional.empty();
  }
}

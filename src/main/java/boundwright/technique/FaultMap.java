package boundwright.technique;

import java.util.ArrayList;
import java.util.List;

/**
 * Which faults were seen on which contacts, counted for a picture: one row per fault, one column per contact. A fault
 * counts once per rep and contact.
 */
public final class FaultMap {
  /**
   * One fault over the contacts.
   *
   * @param key the fault
   * @param perContact how often it was seen on contact 1, 2, ...
   * @param nowhere reps in which it was seen, but not said where
   * @param reps reps in which it was seen at all
   */
  public record Row(String key, List<Integer> perContact, int nowhere, int reps) {}

  private final List<Row> rows;
  private final List<Integer> judged;

  private FaultMap(List<Row> rows, List<Integer> judged) {
    this.rows = rows;
    this.judged = judged;
  }

  /** Counts the reps given; faults by how often they were seen, then by key. */
  public static FaultMap of(List<JudgedRep> reps) {
    int contacts = reps.stream().mapToInt(r -> r.sequence().size()).max().orElse(0);
    List<Integer> judged = new ArrayList<>();
    for (int c = 1; c <= contacts; c++) {
      int contact = c;
      judged.add((int) reps.stream().filter(r -> r.sequence().size() >= contact).count());
    }
    List<Row> rows = new ArrayList<>();
    for (String key : reps.stream().flatMap(r -> r.keys().stream()).distinct().sorted().toList()) {
      List<Integer> perContact = new ArrayList<>();
      for (int c = 1; c <= contacts; c++) {
        FaultTick there = new FaultTick(key, c);
        perContact.add((int) reps.stream().filter(r -> r.ticks().contains(there)).count());
      }
      int seen = (int) reps.stream().filter(r -> r.has(key)).count();
      int nowhere = (int) reps.stream().filter(r -> r.has(key) && r.firstContact(key).isEmpty()).count();
      rows.add(new Row(key, List.copyOf(perContact), nowhere, seen));
    }
    rows.sort((a, b) -> b.reps() != a.reps() ? Integer.compare(b.reps(), a.reps()) : a.key().compareTo(b.key()));
    return new FaultMap(List.copyOf(rows), List.copyOf(judged));
  }

  /** The faults seen, most often first. */
  public List<Row> rows() {
    return rows;
  }

  /** How many judged reps had a contact 1, 2, ...: what a count has to be compared with. */
  public List<Integer> judgedPerContact() {
    return judged;
  }

  /** Contacts of the longest rep. */
  public int contacts() {
    return judged.size();
  }
}

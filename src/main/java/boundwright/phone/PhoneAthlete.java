package boundwright.phone;

import boundwright.athlete.Athlete;
import boundwright.flight.FlightModel;
import boundwright.flight.Rep;
import boundwright.phone.Parcel.Kept;
import boundwright.phone.Parcel.Part;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * One athlete on the phone: what was learned before today, the reps since in the order in which the server learns them, and what they
 * teach. What was learned is worked out when somebody asks, from the base on, or from the last answer when reps were only added.
 */
final class PhoneAthlete {
  /**
   * A rep on the phone.
   *
   * @param rep what was done
   * @param token with which it was tapped, or null
   * @param place in the order of the day: its number on the server, or after all of those in the order tapped
   */
  record Held(Rep rep, @Nullable String token, long place) {
    /** What names it in an entry. */
    String of() {
      return token != null ? token : String.valueOf(rep.id());
    }

    boolean is(String of) {
      return of.equals(token) || (rep.id() > 0 && of.equals(String.valueOf(rep.id())));
    }
  }

  private static final Comparator<Held> ORDER = Comparator.comparing((Held h) -> h.rep().date()).thenComparingLong(Held::place);

  private final Part part;
  private final List<Held> reps = new ArrayList<>();
  /** What was worked out of the reps as they are and is asked for again: the move of a tap and the card after it are one advice. */
  private final Map<Object, Object> workedOut = new HashMap<>();
  private FlightModel learned;
  /** How many of {@link #reps} are in {@link #learned}. */
  private int upTo;

  PhoneAthlete(Part part) {
    this.part = part;
    for (Kept k : part.reps()) {
      reps.add(new Held(k.rep(), k.token(), k.rep().id()));
    }
    reps.sort(ORDER);
    this.learned = part.base();
  }

  Part part() {
    return part;
  }

  Athlete athlete() {
    return part.profile().athlete();
  }

  /** Adds a rep in its place. */
  void add(Held held) {
    int to = reps.size();
    while (to > 0 && ORDER.compare(reps.get(to - 1), held) > 0) {
      to--;
    }
    reps.add(to, held);
    changedFrom(to);
  }

  /** The rep that is meant, or null. */
  @Nullable Held find(String of) {
    return reps.stream().filter(h -> h.is(of)).findFirst().orElse(null);
  }

  void remove(Held held) {
    int at = reps.indexOf(held);
    reps.remove(at);
    changedFrom(at);
  }

  /** Says of a rep what was seen of it, which teaches no length. */
  void replace(Held old, Held seen) {
    reps.set(reps.indexOf(old), seen);
    forget();
  }

  /** The answer to a question about the reps as they are; worked out once until they change. Never null. */
  @SuppressWarnings("unchecked") // a question has one kind of answer
  <T> T once(Object question, Supplier<T> work) {
    Object known = workedOut.get(question);
    if (known == null) {
      known = work.get();
      workedOut.put(question, known);
    }
    return (T) known;
  }

  /** Forgets what was worked out, for another day. */
  void forget() {
    workedOut.clear();
  }

  private void changedFrom(int at) {
    forget();
    if (at < upTo) {
      learned = part.base();
      upTo = 0;
    }
  }

  /** What is known of the flights now. */
  FlightModel model() {
    while (upTo < reps.size()) {
      learned = learned.learn(reps.get(upTo++).rep());
    }
    return learned;
  }

  /** The reps of a day in order. */
  List<Held> on(LocalDate day) {
    return reps.stream().filter(h -> h.rep().date().equals(day)).toList();
  }

  /** All reps in order. */
  List<Held> reps() {
    return List.copyOf(reps);
  }
}

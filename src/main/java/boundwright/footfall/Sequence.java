package boundwright.footfall;

import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;

/**
 * The contacts of one rep in order, 1 to {@value #MAX_CONTACTS}. The first contact is the take-off from the mark; after
 * the last comes the jump, so a sequence has as many flights as contacts.
 *
 * @param contacts the feet in order
 * @param text what the coach wrote, tidied: the form in which it is shown and stored
 */
public record Sequence(List<Foot> contacts, String text) {
  /** Longest sequence that is taken (a limit of this program: nobody bounds further in one rep). */
  public static final int MAX_CONTACTS = 60;
  /** Contacts after which a set is cut, early in the season (common practice). */
  public static final int SET_CONTACTS = 10;

  /** Checks the count and takes a copy. */
  public Sequence {
    contacts = List.copyOf(contacts);
    if (contacts.isEmpty() || contacts.size() > MAX_CONTACTS) {
      throw new RefusedException(
          "A sequence has 1 to " + MAX_CONTACTS + " contacts; this one has " + contacts.size()
              + ". Write feet as R and L, for example RRL x3.");
    }
  }

  /**
   * Reads a sequence as a coach writes it, see {@link SequenceParser}.
   *
   * @throws RefusedException with a line that points at the character that is wrong
   */
  public static Sequence parse(String text) {
    return SequenceParser.parse(text);
  }

  /** The sequence of these feet, written in letters. */
  public static Sequence of(List<Foot> contacts) {
    return new Sequence(contacts, lettersOf(contacts));
  }

  /** How many contacts, 1 to 60. */
  public int size() {
    return contacts.size();
  }

  /** The feet in letters without spaces: {@code RRLRRL}. */
  public String letters() {
    return lettersOf(contacts);
  }

  /** Contacts of one leg. */
  public int count(Foot foot) {
    return (int) contacts.stream().filter(c -> c == foot).count();
  }

  /** Right contacts less left contacts. */
  public int surplusRight() {
    return count(Foot.RIGHT) - count(Foot.LEFT);
  }

  /** The flights in order; the last is the jump. */
  public List<Flight> flights() {
    List<Flight> out = new ArrayList<>(contacts.size());
    for (int i = 0; i < contacts.size(); i++) {
      FlightKind kind =
          i == contacts.size() - 1
              ? FlightKind.JUMP
              : contacts.get(i) == contacts.get(i + 1) ? FlightKind.HOP : FlightKind.BOUND;
      out.add(new Flight(i + 1, contacts.get(i), kind));
    }
    return List.copyOf(out);
  }

  /** The same sequence begun on the other foot: R becomes L and L becomes R. */
  public Sequence mirrored() {
    StringBuilder swapped = new StringBuilder(text.length());
    for (char c : text.toCharArray()) {
      swapped.append(c == 'R' ? 'L' : c == 'L' ? 'R' : c);
    }
    return new Sequence(contacts.stream().map(Foot::other).toList(), swapped.toString());
  }

  /** The first {@code n} contacts, 1 to {@link #size()}. */
  public Sequence first(int n) {
    return n == size() ? this : of(contacts.subList(0, n));
  }

  /**
   * Cuts a long sequence into sets of at most {@code most} contacts, in order; the last may be shorter. Ten is usual early in
   * the season (common practice).
   */
  public List<Sequence> sets(int most) {
    if (most < 1) {
      throw new RefusedException("A set has at least 1 contact; the limit was " + most + ". Try " + SET_CONTACTS + ".");
    }
    if (size() <= most) {
      return List.of(this);
    }
    int sets = (size() + most - 1) / most;
    List<Sequence> out = new ArrayList<>(sets);
    for (int s = 0, at = 0; s < sets; s++) {
      int to = at + most;
      if (to > size()) {
        to = size();
      }
      out.add(of(contacts.subList(at, to)));
      at = to;
    }
    return List.copyOf(out);
  }

  private static String lettersOf(List<Foot> feet) {
    StringBuilder out = new StringBuilder(feet.size());
    feet.forEach(f -> out.append(f.letter()));
    return out.toString();
  }
}

package boundwright.meet;

import boundwright.athlete.person.Sex;
import boundwright.jump.CombinedTable;
import boundwright.jump.Event;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A meet as it is kept.
 *
 * @param id number in the store, 0 before it is stored
 * @param name as the coach calls it, 1 to 80 characters
 * @param date its (first) day
 * @param competition for whom, such as a label of {@link BoardDistance#ALL}; 1 to 80 characters
 * @param board_m take-off line to sand [m], 3 to 15 in the triple jump, 1 to 3 in the long jump
 * @param scoring points by this table's formula, of the meet's event; in a combined event that of its table; or null without points
 * @param rules of the meet
 * @param entrants in the order drawn
 * @param attempts that count, in the order entered: of one entrant and round the newest
 */
public record MeetSheet(
    long id,
    String name,
    LocalDate date,
    String competition,
    double board_m,
    @Nullable Scoring scoring,
    MeetRules rules,
    List<Entrant> entrants,
    List<KeptAttempt> attempts) {
  /** Takes copies; refuses what is no meet. */
  public MeetSheet {
    name = name.strip().replaceAll("\\s+", " ");
    competition = competition.strip();
    entrants = List.copyOf(entrants);
    attempts = List.copyOf(attempts);
    if (name.isEmpty() || name.length() > 80) {
      throw new RefusedException("A meet has a name of 1 to 80 characters; this one has " + name.length() + ".");
    }
    if (competition.isEmpty() || competition.length() > 80) {
      throw new RefusedException("A meet says for whom it is in 1 to 80 characters; here are " + competition.length() + ".");
    }
    rules.event().board(board_m);
    Combined part = rules.combined();
    CombinedTable table = scoring == null ? null : scoring.combined();
    if (part == null ? table != null : table != part.table()) {
      throw new RefusedException(
          (scoring == null ? "A meet without points is" : "Points by the table " + scoring.label() + " are") + " not for "
              + (part == null ? "a meet that is no combined event" : "the " + part.table().label()) + ". Choose the table of the meet.");
    }
    if (scoring != null && scoring.event() != rules.event()) {
      throw new RefusedException("Points by " + scoring.label() + " do not fit a meet in the " + rules.event().label() + ". Choose a table of that event.");
    }
  }

  /** Which jump. */
  public Event event() {
    return rules.event();
  }

  /** A meet without anybody on the list, before it is stored. */
  public static MeetSheet of(String name, LocalDate date, BoardDistance board, @Nullable Scoring scoring, MeetRules rules) {
    return new MeetSheet(0, name, date, board.label(), board.distance_m(), scoring, rules, List.of(), List.of());
  }

  /** Whether it is for women or girls and this is a man, or the other way round; false where either is not known, or the competition has the coach's own words. */
  public boolean isForOthers(@Nullable Sex sex) {
    return sex != null && BoardDistance.ALL.stream().anyMatch(b -> b.label().equals(competition) && b.sex() != null && b.sex() != sex);
  }

  /** The board with where its distance stood: one of the known ones, or the coach's own entry. */
  public BoardDistance board() {
    return BoardDistance.ALL.stream()
        .filter(b -> b.event() == rules.event() && b.label().equals(competition) && Math.abs(b.distance_m() - board_m) < 1e-9)
        .findFirst()
        .orElseGet(() -> BoardDistance.own(rules.event(), competition, board_m));
  }

  /**
   * The competition as it stands.
   *
   * @throws RefusedException with nobody on the list
   */
  public Meet meet() {
    return Meet.asKept(rules, entrants.stream().map(Entrant::name).toList(), attempts.stream().map(KeptAttempt::attempt).toList());
  }

  /** Who has this number on the list. */
  public Optional<Entrant> entrant(long entrantId) {
    return entrants.stream().filter(e -> e.id() == entrantId).findFirst();
  }

  /** Who is called so on the list, whatever the case. */
  public Optional<Entrant> entrant(String called) {
    String plain = called.strip().replaceAll("\\s+", " ");
    return entrants.stream().filter(e -> e.name().equalsIgnoreCase(plain)).findFirst();
  }

  /**
   * The first round in which somebody has no attempt yet.
   *
   * @throws RefusedException if they have one in every round
   */
  public int nextRound(Entrant who) {
    for (int round = 1; round <= rules.rounds(); round++) {
      int r = round;
      if (attempts.stream().noneMatch(a -> a.entrantId() == who.id() && a.attempt().round() == r)) {
        return round;
      }
    }
    throw new RefusedException(who.name() + " has an attempt in all " + rules.rounds() + " rounds. Say which round to mend.");
  }

  /** What counts of an entrant's attempt in a round. */
  public Optional<KeptAttempt> standing(long entrantId, int round) {
    return attempts.stream().filter(a -> a.entrantId() == entrantId && a.attempt().round() == round).reduce((before, after) -> after);
  }

  /** Whether an attempt of this meet was kept by somebody else after the one who enters had looked. */
  public boolean unseen(KeptAttempt there, Hand hand) {
    return !hand.knows(there);
  }

  /** The place of an athlete of the squad on the list. */
  public Optional<Entrant> entrantOf(long athlete) {
    return entrants.stream()
        .filter(
            e -> {
              Long of = e.athleteId();
              return of != null && of == athlete;
            })
        .findFirst();
  }
}

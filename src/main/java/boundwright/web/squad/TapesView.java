package boundwright.web.squad;

import boundwright.athlete.Athlete;
import boundwright.card.SessionCard.SquadPage;
import boundwright.load.DayVerdict;
import boundwright.load.Finding;
import boundwright.picture.tapes.TapesPicture.Laid;
import boundwright.picture.tapes.TapesPicture;
import boundwright.quantity.LengthUnit;
import boundwright.runway.Beginning;
import boundwright.runway.DayPlan;
import boundwright.runway.Opener;
import boundwright.runway.Tapes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The tapes of the day.
 *
 * @param tapes which, with the proof
 * @param unit the coach's unit
 * @param plan the drills that they are for
 * @param squad how many athletes
 * @param notSimply those whose day is not simply allowed; who is held has no tape
 * @param card the marks of everybody as they are printed, shown beside on a desk; null for fewer than two
 */
public record TapesView(Tapes tapes, LengthUnit unit, DayPlan plan, int squad, List<Who> notSimply, @Nullable SquadPage card) {
  /** Outlined tapes that can be told from one another; where there are more, the names stand in a line. */
  private static final int MOST_OUTLINED = 8;

  /** An athlete with the one verdict of their day. */
  public record Who(Athlete athlete, DayVerdict day) {}

  /**
   * What holds of several athletes.
   *
   * @param names of whom
   * @param said what
   */
  public record Together(String names, String said) {}

  /** The runway for a desk. */
  public TapesPicture wide() {
    return TapesPicture.wide(laid(), unit);
  }

  /** The runway for a phone. */
  public TapesPicture narrow() {
    return TapesPicture.narrow(laid(), unit);
  }

  /** Whether there is anything to draw. */
  public boolean drawn() {
    return !laid().isEmpty();
  }

  /** Whether outlined tapes are drawn for those for whom no mark is sure enough. */
  public boolean outlined() {
    return !tapes.without().isEmpty() && best().size() <= MOST_OUTLINED;
  }

  /** Those for whom no mark is sure enough and no tape is drawn, drill by drill. */
  public List<String> unsure() {
    return outlined() ? List.of() : lines(tapes.without());
  }

  private List<Laid> laid() {
    List<Laid> out = new ArrayList<>();
    tapes.tapes().forEach(t -> out.add(new Laid(t.markToSand_m(), true, lines(t.serves()))));
    if (outlined()) {
      best().values().forEach(ws -> out.add(new Laid(ws.get(0).advice().markToSand_m(), false, lines(ws))));
    }
    return out;
  }

  /** Wishes without a tape by their best mark as it is written. */
  private Map<String, List<Tapes.Wish>> best() {
    Map<String, List<Tapes.Wish>> out = new LinkedHashMap<>();
    tapes.without().forEach(w -> out.computeIfAbsent(unit.write(w.advice().markToSand_m()), m -> new ArrayList<>()).add(w));
    return out;
  }

  /** Names, with the sequence before them only where the day has more than one into sand. */
  private List<String> lines(List<Tapes.Wish> wishes) {
    Map<String, List<String>> bySequence = new LinkedHashMap<>();
    wishes.forEach(
        w -> {
          List<String> names = bySequence.computeIfAbsent(sequence(w), s -> new ArrayList<>());
          if (!names.contains(w.athlete())) {
            names.add(w.athlete());
          }
        });
    return bySequence.entrySet().stream().map(e -> (sequences() > 1 ? e.getKey() + ": " : "") + String.join(", ", e.getValue())).toList();
  }

  private static String sequence(Tapes.Wish wish) {
    return wish.advice().forecast().sequence().text();
  }

  private long sequences() {
    return Stream.concat(tapes.tapes().stream().flatMap(t -> t.serves().stream()), tapes.without().stream()).map(TapesView::sequence).distinct().count();
  }

  /** Who has no tape because bounding is stopped, and what body or load says of the others: the same said once, with all names. */
  public List<Together> today() {
    Map<String, List<String>> bySentence = new LinkedHashMap<>();
    for (Who who : notSimply) {
      DayVerdict day = who.day();
      String said =
          day.held()
              ? "no tape. " + day.reason()
              : day.body().map(Finding::brief).orElse("load " + day.answer().label() + ".");
      bySentence.computeIfAbsent(said, s -> new ArrayList<>()).add(who.athlete().name());
    }
    return bySentence.entrySet().stream().map(e -> new Together(names(e.getValue()), e.getKey())).toList();
  }

  /** Who begins today without history, and how often a rep from the tape lands in the sand: the same said once, with all names. */
  public List<Together> beginnings() {
    Map<String, List<String>> bySentence = new LinkedHashMap<>();
    for (Tapes.Wish wish : wishes()) {
      if (wish.advice().beginning() != null) {
        List<String> names = bySentence.computeIfAbsent((sequences() > 1 ? sequence(wish) + ": " : "") + works(wish) + ".", s -> new ArrayList<>());
        if (!names.contains(wish.athlete())) {
          names.add(wish.athlete());
        }
      }
    }
    return bySentence.entrySet().stream().map(e -> new Together(names(e.getValue()), e.getKey())).toList();
  }

  /** All names, or that it is everybody: a list of the whole squad tells nothing. */
  private String names(List<String> names) {
    return names.size() > 1 && names.size() == squad ? "Everybody" : String.join(", ", names);
  }

  /** Those who bound today although the load is not simply allowed. */
  public List<Who> loads() {
    return notSimply.stream().filter(w -> !w.day().held()).toList();
  }

  /** Every wish, served ones first. */
  public List<Tapes.Wish> wishes() {
    return Stream.concat(tapes.tapes().stream().flatMap(t -> t.serves().stream()), tapes.without().stream()).toList();
  }

  /** What works instead where no mark does: the first way out, or empty. */
  public String instead(Tapes.Wish wish) {
    return Optional.of(wish.advice().openers()).filter(o -> !o.isEmpty()).map(o -> o.get(0)).map(Opener::said).orElse("");
  }

  /** The marks that work, in words; of a beginning, how often a rep from its tape lands in the sand. */
  public String works(Tapes.Wish wish) {
    Beginning beginning = wish.advice().beginning();
    return beginning == null ? "works from " + worksFrom(wish) : beginning.odds() + " land in the sand, " + beginning.soon();
  }

  /** The marks that work, or of a beginning those that are as good; in words. */
  public String worksFrom(Tapes.Wish wish) {
    Beginning beginning = wish.advice().beginning();
    if (beginning != null) {
      return unit.write(beginning.from_m()) + " to " + unit.write(beginning.to_m());
    }
    return wish.advice().window() == null
        ? "no mark"
        : unit.write(wish.advice().window().min_m()) + " to " + unit.write(wish.advice().window().max_m());
  }
}

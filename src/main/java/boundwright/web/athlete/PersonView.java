package boundwright.web.athlete;

import boundwright.athlete.person.Consent;
import boundwright.athlete.person.EndAge;
import boundwright.athlete.person.People;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.Scope;
import boundwright.athlete.person.Standing;
import boundwright.web.page.Figures;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Birth date and what was agreed to.
 *
 * @param person what is known
 * @param now how it stands with each thing that is asked for
 * @param said all answers, the newest last
 * @param endAge the setting
 * @param today the day
 */
public record PersonView(Person person, Map<Scope, Standing> now, List<Consent> said, EndAge endAge, LocalDate today) {
  private static final int MOST_PAST = 12;

  /** Takes copies. */
  public PersonView {
    now = Map.copyOf(now);
    said = List.copyOf(said);
  }

  /** Of somebody today. */
  static PersonView of(People people, long athleteId, LocalDate today) {
    Map<Scope, Standing> now = new EnumMap<>(Scope.class);
    Arrays.stream(Scope.values()).forEach(s -> now.put(s, people.standing(athleteId, s)));
    return new PersonView(people.person(athleteId), now, people.said(athleteId), people.endAge(), today);
  }

  /** The birth date with the age, and the sex where it is known. */
  public String born() {
    LocalDate day = person.born();
    OptionalInt age = person.age(today);
    String born = day == null ? "not known" : Figures.dayOfYear(day) + (age.isPresent() ? ", " + age.getAsInt() : "");
    return person.sex() == null ? born : born + ", " + person.sex().label();
  }

  /** As the form holds it. */
  public String bornField() {
    return person.born() == null ? "" : String.valueOf(person.born());
  }

  /** As the form holds it. */
  public String sexField() {
    return person.sex() == null ? "" : person.sex().name();
  }

  /** {@code Films are taken and read}. */
  public String asked(Scope scope) {
    return Character.toUpperCase(scope.label().charAt(0)) + scope.label().substring(1);
  }

  /** How it stands with one thing. */
  public String told(Scope scope) {
    Standing s = standing(scope);
    Consent c = s.said();
    LocalDate last = s.lastDay();
    return switch (s.kind()) {
      case NOT_ASKED -> s.kind().label();
      case YES, NO -> s.kind().label() + said(c) + (last == null ? "" : "; until " + Figures.dayOfYear(last));
      case ENDED, WITHDRAWN -> s.kind().label() + " " + day(s.day());
    };
  }

  private static String said(@Nullable Consent c) {
    return c == null ? "" : ", " + Figures.dayOfYear(c.on()) + (c.by().isEmpty() ? "" : ", " + c.by());
  }

  private static String day(@Nullable LocalDate day) {
    return day == null ? "" : Figures.dayOfYear(day);
  }

  private Standing standing(Scope scope) {
    return now.getOrDefault(scope, Standing.NOT_ASKED);
  }

  /** What can be withdrawn. */
  public List<Scope> agreed() {
    return Arrays.stream(Scope.values()).filter(s -> standing(s).may()).toList();
  }

  /** What a missing birth date leaves open, or empty. */
  public String hint() {
    return person.born() == null && endAge != EndAge.NONE && !agreed().isEmpty() ? "Without a birth date nobody is told when to ask anew." : "";
  }

  /** When a yes without a day of its own ends. */
  public String usualEnd() {
    return endAge == EndAge.NONE ? "until it is withdrawn" : endAge.label();
  }

  /** The answers before, the newest first. */
  public List<String> past() {
    return IntStream.range(0, said.size())
        .mapToObj(i -> said.get(said.size() - 1 - i))
        .limit(MOST_PAST)
        .map(c -> asked(c.scope()) + ": " + (c.may() ? "yes" : "no") + said(c) + (c.withdrawn() == null ? "" : "; withdrawn " + day(c.withdrawn())))
        .toList();
  }
}

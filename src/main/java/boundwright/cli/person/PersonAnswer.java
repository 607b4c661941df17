package boundwright.cli.person;

import boundwright.athlete.Athlete;
import boundwright.athlete.person.Consent;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.Scope;
import boundwright.athlete.person.Standing;
import boundwright.store.Workbench;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What {@code athlete --json} prints; field by field in {@code docs/formats-json.md}. */
public record PersonAnswer(
    String athlete, @Nullable String born, @Nullable Integer age, @Nullable String sex, List<Asked> consents, List<Said> said) {
  /** How it stands with one thing that is asked for. */
  public record Asked(String scope, String standing, @Nullable String lastDay) {}

  /** An answer that was given. */
  public record Said(String scope, boolean may, String on, String by, @Nullable String until, @Nullable String withdrawn) {}

  static PersonAnswer of(Workbench bench, Athlete who, LocalDate today) {
    Person person = bench.people().person(who.id());
    return new PersonAnswer(
        who.name(),
        text(person.born()),
        person.age(today).isPresent() ? person.age(today).getAsInt() : null,
        person.sex() == null ? null : person.sex().label(),
        Arrays.stream(Scope.values()).map(s -> asked(s, bench.people().standing(who.id(), s))).toList(),
        bench.people().said(who.id()).stream().map(PersonAnswer::said).toList());
  }

  private static Asked asked(Scope scope, Standing s) {
    return new Asked(scope.key(), s.kind().label(), text(s.lastDay()));
  }

  private static Said said(Consent c) {
    return new Said(c.scope().key(), c.may(), c.on().toString(), c.by(), text(c.until()), text(c.withdrawn()));
  }

  private static @Nullable String text(@Nullable LocalDate day) {
    return day == null ? null : day.toString();
  }

  void print(PrintWriter out) {
    out.println(athlete + ": born " + (born == null ? "not known" : born + ", " + age) + (sex == null ? "" : ", " + sex));
    for (Asked a : consents) {
      out.println("  " + a.scope() + ": " + a.standing() + (a.lastDay() == null ? "" : ", last day " + a.lastDay()));
    }
  }
}

package boundwright.cli.person;

import boundwright.athlete.Athlete;
import boundwright.athlete.person.Consent;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.Scope;
import boundwright.athlete.person.Sex;
import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Choices;
import boundwright.cli.DataOptions;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.cli.WhoseOption;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Birth date and what was agreed to; without anything to enter, what is kept. */
@Command(
    name = "athlete",
    description = {
      "Enters a birth date, or what an athlete or who answers for them agreed to; or tells what is kept.",
      "Scopes: film (films are taken and read), results (shown outside the club), move (data go to another club).",
      "Example: boundwright athlete --athlete NAME --consent film --yes --by mother --on 2026-05-12%n"
    })
public final class AthleteCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Mixin private WhoseOption whose = new WhoseOption();

  @Option(names = "--born", paramLabel = "DAY", description = "Birth date, as 2011-05-14; none takes it out.")
  private @Nullable String born;

  @Option(names = "--sex", paramLabel = "SEX", description = "female or male; none takes it out.")
  private @Nullable String sex;

  @Option(names = "--consent", paramLabel = "SCOPE", description = "What was asked, with --yes or --no: film, results or move.")
  private @Nullable String consent;

  @Option(names = "--yes", description = "They said yes.")
  private boolean yes;

  @Option(names = "--no", description = "They said no.")
  private boolean no;

  @Option(names = "--by", paramLabel = "WHO", description = "Who said it, as a relation: mother, guardian, the athlete.")
  private String by = "";

  @Option(names = "--on", paramLabel = "DAY", description = "When it was said. Default: today.")
  private @Nullable String on;

  @Option(names = "--until", paramLabel = "DAY", description = "Last day of a yes. Default: until the birthday of the settings.")
  private @Nullable String until;

  @Option(names = "--withdraw", paramLabel = "SCOPE", description = "Takes a yes back from today on.")
  private @Nullable String withdraw;

  /** Under this command. */
  public AthleteCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    if (consent != null ? yes == no : yes || no || until != null || on != null || !by.isEmpty()) {
      throw new RefusedException("An answer has --consent SCOPE and one of --yes and --no. Nothing was changed.");
    }
    try (Workbench bench = data.open(s)) {
      Athlete who = whose.in(bench);
      bench.together(() -> enter(bench, who, s));
      PersonAnswer answer = PersonAnswer.of(bench, who, s.today());
      if (top.json()) {
        Json.print(s.out(), answer);
      } else {
        answer.print(s.out());
      }
      return 0;
    }
  }

  private Athlete enter(Workbench bench, Athlete who, Surroundings s) {
    if (born != null || sex != null) {
      Person was = bench.people().person(who.id());
      bench.people()
          .keep(
              who.id(),
              new Person(
                  born == null ? was.born() : born.equals("none") ? null : Choices.anyDay(born, s),
                  sex == null ? was.sex() : sex.equals("none") ? null : Choices.choice("sex", sex, List.of(Sex.values()), Sex::label)));
    }
    if (withdraw != null) {
      bench.people().withdraw(who, scope(withdraw));
    }
    if (consent != null) {
      bench.people().say(
          new Consent(0, who.id(), scope(consent), yes, Choices.anyDay(on, s), by, until == null ? null : Choices.anyDay(until, s), null));
    }
    return who;
  }

  private static Scope scope(String written) {
    return Choices.choice("scope", written, List.of(Scope.values()), Scope::key);
  }
}

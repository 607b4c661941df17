package boundwright.store.view;

import boundwright.athlete.person.Consent;
import boundwright.athlete.person.EndAge;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.PersonRepository;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Birth dates and answers of one athlete or of nobody; whoever is not seen was not asked. */
public final class SeenPeople implements PersonRepository {
  private final PersonRepository all;
  private final @Nullable Long only;

  /** Of these the one, or nobody. */
  public SeenPeople(PersonRepository all, @Nullable Long only) {
    this.all = all;
    this.only = only;
  }

  private boolean sees(long athleteId) {
    return only != null && only == athleteId;
  }

  @Override
  public Map<Long, Person> people() {
    Long one = only;
    return one == null ? Map.of() : Map.of(one, all.person(one));
  }

  @Override
  public Map<Long, Person> people(List<Long> athletes) {
    return all.people(athletes.stream().filter(this::sees).toList());
  }

  @Override
  public Person person(long athleteId) {
    return sees(athleteId) ? all.person(athleteId) : Person.UNKNOWN;
  }

  @Override
  public List<Consent> said() {
    Long one = only;
    return one == null ? List.of() : all.said(one);
  }

  @Override
  public List<Consent> said(long athleteId) {
    return sees(athleteId) ? all.said(athleteId) : List.of();
  }

  @Override
  public EndAge endAge() {
    return all.endAge();
  }

  @Override
  public void keep(long athleteId, Person person) {
    throw refused();
  }

  @Override
  public void add(Consent consent) {
    throw refused();
  }

  @Override
  public void withdraw(long consentId, LocalDate from) {
    throw refused();
  }

  @Override
  public void keep(EndAge age) {
    throw refused();
  }

  private static RefusedException refused() {
    return new RefusedException("Birth dates and consent are entered by a coach. Nothing was kept; tell the coach.");
  }
}

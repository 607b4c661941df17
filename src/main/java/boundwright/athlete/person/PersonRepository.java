package boundwright.athlete.person;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** What this part needs kept. Every write is on disk when the method returns; of somebody who is not there nothing is kept. */
public interface PersonRepository {
  /** Those of whom something is known, by the athlete's number. */
  Map<Long, Person> people();

  /** Those of these athletes of whom something is known, by number. */
  Map<Long, Person> people(List<Long> athletes);

  /** What is known of somebody. */
  Person person(long athleteId);

  /** Keeps what is known of somebody, in place of what was. */
  void keep(long athleteId, Person person);

  /** All answers of everybody, in the order in which they were said; of the same day the newer entry is later. */
  List<Consent> said();

  /** All answers of somebody, in the same order. */
  List<Consent> said(long athleteId);

  /** Keeps an answer. */
  void add(Consent consent);

  /** Says from which day an answer no longer holds. */
  void withdraw(long consentId, LocalDate from);

  /** The setting; {@link EndAge#DEFAULT} if none was kept. */
  EndAge endAge();

  /** Keeps the setting. */
  void keep(EndAge age);
}

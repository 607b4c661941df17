package boundwright.athlete.person;

import boundwright.athlete.Athlete;
import boundwright.quantity.RefusedException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Says who somebody is and what may be done. Safe to use from many threads. */
public final class People {
  private final PersonRepository rows;
  private final Clock clock;

  /** Asks these rows; {@code clock} tells which day it is. */
  public People(PersonRepository rows, Clock clock) {
    this.rows = rows;
    this.clock = clock;
  }

  /** What is known of somebody. */
  public Person person(long athleteId) {
    return rows.person(athleteId);
  }

  /** Those of whom something is known, by the athlete's number. */
  public Map<Long, Person> people() {
    return rows.people();
  }

  /**
   * Keeps what is known of somebody.
   *
   * @throws RefusedException if they would be born after today
   */
  public void keep(long athleteId, Person person) {
    LocalDate born = person.born();
    if (born != null && born.isAfter(today())) {
      throw new RefusedException("The birth date " + born + " lies after today, " + today() + ". Check the year.");
    }
    rows.keep(athleteId, person);
  }

  /** The birthday at which a yes ends that was said before it. */
  public EndAge endAge() {
    return rows.endAge();
  }

  /** Sets {@link #endAge}; it holds for what was said before too. */
  public void keep(EndAge age) {
    rows.keep(age);
  }

  /** All answers of somebody, the newest last. */
  public List<Consent> said(long athleteId) {
    return rows.said(athleteId);
  }

  /** How it stands with somebody today. */
  public Standing standing(long athleteId, Scope scope) {
    Consent newest = newest(rows.said(athleteId), scope);
    return newest == null ? Standing.NOT_ASKED : Standing.of(newest, rows.person(athleteId), rows.endAge(), today());
  }

  /** How it stands with everybody who was asked, by the athlete's number. */
  public Map<Long, Standing> standings(Scope scope) {
    Map<Long, Person> people = rows.people();
    EndAge age = rows.endAge();
    Map<Long, Standing> out = new HashMap<>();
    for (Consent c : rows.said()) {
      if (c.scope() == scope) {
        out.put(c.athleteId(), Standing.of(c, people.getOrDefault(c.athleteId(), Person.UNKNOWN), age, today()));
      }
    }
    return out;
  }

  private static @Nullable Consent newest(List<Consent> said, Scope scope) {
    return said.stream().filter(c -> c.scope() == scope).reduce((before, after) -> after).orElse(null);
  }

  /**
   * Keeps an answer.
   *
   * @throws RefusedException if it would be said after today
   */
  public void say(Consent consent) {
    if (consent.on().isAfter(today())) {
      throw new RefusedException("It was said on " + consent.on() + ", after today, " + today() + ". Enter the day on which it was said.");
    }
    rows.add(consent);
  }

  /** Keeps an answer of today, of which nothing more is noted. */
  public void say(long athleteId, Scope scope, boolean may) {
    say(new Consent(0, athleteId, scope, may, today(), "", null, null));
  }

  /**
   * Takes a yes back from today on.
   *
   * @throws RefusedException if there is no yes
   */
  public void withdraw(Athlete athlete, Scope scope) {
    Standing now = standing(athlete.id(), scope);
    Consent said = now.said();
    if (!now.may() || said == null) {
      throw new RefusedException(
          "There is nothing to withdraw: that " + scope.label() + " is not agreed to for " + athlete.name() + " (" + now.kind().label() + "). Nothing was changed.");
    }
    rows.withdraw(said.id(), today());
  }

  /**
   * Refuses to read a film of somebody who may not be filmed, or of whom nobody asked.
   *
   * @throws RefusedException with a way out
   */
  public void mayBeFilmed(Athlete athlete) {
    Standing now = standing(athlete.id(), Scope.FILM);
    switch (now.kind()) {
      case NOT_ASKED ->
          throw new RefusedException(
              "Nobody has recorded that " + athlete.name() + " may be filmed, so nothing is read of them. Ask them (of a minor, a parent or guardian too), and say so with the film or on their page.");
      case NO ->
          throw new RefusedException(
              athlete.name() + " may not be filmed, as said on " + now.day() + ", so nothing is read of them. If that has changed, say so with the film or on their page.");
      case WITHDRAWN ->
          throw new RefusedException(
              "That " + athlete.name() + " may be filmed was withdrawn on " + now.day() + ", so nothing is read of them. If that has changed, say so with the film or on their page.");
      case ENDED ->
          throw new RefusedException(
              "That " + athlete.name() + " may be filmed was agreed until " + now.day() + " and has ended, so nothing is read of them. Ask again (from then on perhaps the athlete alone: local law decides), and say so with the film or on their page.");
      case YES -> {}
    }
  }

  private LocalDate today() {
    return LocalDate.now(clock);
  }
}

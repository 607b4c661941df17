package boundwright.store.transfer;

import boundwright.account.Club;
import boundwright.account.Membership;
import boundwright.athlete.Athlete;
import boundwright.athlete.person.Scope;
import boundwright.athlete.person.Standing;
import boundwright.quantity.RefusedException;
import boundwright.quantity.Secrets;
import boundwright.store.Workbench;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.LongFunction;
import java.util.random.RandomGenerator;

/**
 * Athletes change clubs: one head coach offers, with the athlete's yes to it, the other takes. Everything that is the athlete's goes along
 * in one step, holds and pain too, and nothing of them stays behind. Safe to use from many threads.
 */
public final class Transfers {
  private final Workbench first;
  private final LongFunction<Workbench> clubs;
  private final SqlOffers offers;
  private final Clock clock;
  private final RandomGenerator random;

  /**
   * @param first the store of the first club, which keeps the offers
   * @param clubs the open store of each club
   * @param random one that cannot be guessed
   */
  public Transfers(Workbench first, LongFunction<Workbench> clubs, RandomGenerator random) {
    this.first = first;
    this.clubs = clubs;
    this.offers = new SqlOffers(first.transactions());
    this.clock = first.clock();
    this.random = random;
  }

  /** An offer as the club is told of it that may take it. */
  public record Offered(long id, String athlete, String fromClub) {}

  /** The clubs that an athlete of one can go to. */
  public List<Club> others(long club) {
    return first.accounts().clubs().stream().filter(c -> c.id() != club).toList();
  }

  /** To which club an athlete is offered. */
  public Optional<Club> offeredTo(long club, long athleteId) {
    return offers.of(club, athleteId).flatMap(o -> club(o.toClub()));
  }

  /**
   * Offers an athlete; an offer to another club from before is withdrawn.
   *
   * @throws RefusedException if they did not agree to it, or there is no such club
   */
  public void offer(long club, Athlete who, long toClub) {
    if (toClub == club || club(toClub).isEmpty()) {
      throw new RefusedException("There is no other club with the number " + toClub + ". Reload the page and choose one of the list.");
    }
    agreed(club, who);
    offers.keep(new Offer(0, Secrets.fresh(random) + Secrets.fresh(random), club, who.id(), toClub, clock.instant()));
  }

  /** Takes an offer back; nothing happens if there is none. */
  public void withdraw(long club, long athleteId) {
    offers.of(club, athleteId).ifPresent(o -> offers.remove(o.id()));
  }

  /** What a club is offered. */
  public List<Offered> to(long club) {
    return offers.to(club).stream()
        .flatMap(
            o ->
                clubs.apply(o.fromClub()).athletes().byId(o.athleteId()).stream()
                    .map(a -> new Offered(o.id(), a.name(), club(o.fromClub()).map(Club::name).orElse(""))))
        .toList();
  }

  /**
   * Takes an athlete who is offered. It is done once, also if the program is closed in the middle and it is asked for again.
   *
   * @return the athlete's number in this club
   * @throws RefusedException if there is no such offer any more, the athlete no longer agrees, or the name is taken here
   */
  public long take(long club, long offer) {
    Offer o = offer(club, offer);
    Workbench from = clubs.apply(o.fromClub());
    Workbench to = clubs.apply(club);
    Optional<Athlete> who = from.athletes().byId(o.athleteId());
    Optional<Long> done = to.taken(o.token());
    if (done.isEmpty()) {
      Athlete still = who.orElseThrow(Transfers::gone);
      agreed(o.fromClub(), still);
      done = to.once(o.token(), () -> new Carrying(from, to).carry(still)).or(() -> to.taken(o.token()));
    }
    long there = done.orElseThrow();
    to.logbook().relearn(there);
    who.map(Athlete::id).ifPresent(from::erase);
    // their own account goes along
    first.accounts().members(o.fromClub()).stream()
        .filter(m -> Objects.equals(m.athleteId(), o.athleteId()))
        .forEach(m -> first.accounts().setMembership(new Membership(m.accountId(), club, m.role(), there)));
    first.accounts().forgetAthlete(o.fromClub(), o.athleteId());
    offers.remove(o.id());
    return there;
  }

  /** Refuses an offer; the athlete stays where they are. */
  public void decline(long club, long offer) {
    offers.remove(offer(club, offer).id());
  }

  private Offer offer(long club, long offer) {
    return offers.byId(offer).filter(o -> o.toClub() == club).orElseThrow(Transfers::gone);
  }

  private static RefusedException gone() {
    return new RefusedException("This offer is not there any more: it was taken, declined or withdrawn. Nothing was changed.");
  }

  private void agreed(long club, Athlete who) {
    Standing now = clubs.apply(club).people().standing(who.id(), Scope.MOVE);
    if (!now.may()) {
      throw new RefusedException(
          who.name() + "'s data may not go to another club: " + now.kind().label() + ". Ask them (of a minor, a parent or guardian too) and enter what was said under Birth date and consent. Nothing was changed.");
    }
  }

  private Optional<Club> club(long id) {
    return first.accounts().clubs().stream().filter(c -> c.id() == id).findFirst();
  }
}

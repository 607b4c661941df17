package boundwright.season.desk;

import boundwright.load.LegCare;
import boundwright.quantity.RefusedException;
import boundwright.season.Done;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRepository;
import boundwright.season.SeasonRepository.Version;
import boundwright.season.solve.SeasonWork;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;

/** Keeps seasons and publishes their plans. Whatever is published through here was looked at as a whole first. */
public final class SeasonDesk {
  private static final int KEY_BYTES = 16;
  private static final int SAID = 3;

  private final SeasonRepository seasons;
  private final Supplier<SeasonWork> work;
  private final Clock clock;
  private final RandomGenerator random;

  /**
   * For these seasons.
   *
   * @param work what planning takes from the log, with the rules of the moment
   * @param random draws what seasons are known by elsewhere
   */
  public SeasonDesk(SeasonRepository seasons, Supplier<SeasonWork> work, Clock clock, RandomGenerator random) {
    this.seasons = seasons;
    this.work = work;
    this.clock = clock;
    this.random = random;
  }

  /**
   * Keeps a season. One of the same name and first day is kept anew, and its published plans stay.
   *
   * @return its number
   */
  public long keep(SeasonInput season) {
    Optional<SeasonRepository.Kept> same =
        seasons.all().stream().filter(k -> k.name().equals(season.name()) && k.first().equals(season.first())).findFirst();
    if (same.isPresent()) {
      seasons.keep(same.get().id(), season);
      return same.get().id();
    }
    byte[] key = new byte[KEY_BYTES];
    random.nextBytes(key);
    return seasons.add(season, HexFormat.of().formatHex(key), clock.instant()).id();
  }

  /** Refuses a name and first day that a season has already: beginning it anew would write over that one. */
  public void free(String name, LocalDate first) {
    if (seasons.all().stream().anyMatch(k -> k.name().equals(name.strip()) && k.first().equals(first))) {
      throw new RefusedException("A season called " + name.strip() + " begins on " + first + " already. Change that one, or choose another name.");
    }
  }

  /**
   * Changes a season as one more edition of it. To be called with nobody else writing in between.
   *
   * @param change of what stands now to what shall stand; it may refuse
   */
  public void change(long id, UnaryOperator<SeasonInput> change) {
    seasons.keep(id, change.apply(input(id)));
  }

  /**
   * Takes the last change of a season back: what it was before it is put in place, as one more edition.
   *
   * @param edition the newest, as the coach saw it
   */
  public void takeBack(long id, int edition) {
    if (seasons.byId(id).map(SeasonRepository.Kept::edition).orElse(0) != edition) {
      throw new RefusedException("The season was changed meanwhile. Look at it first, then do this again if it is still needed.");
    }
    seasons.keep(
        id, seasons.input(id, edition - 1).orElseThrow(() -> new RefusedException("There is no change of this season to take back.")));
  }

  /** The season of today, or else the next, or else the last that was. */
  public Optional<SeasonRepository.Kept> current() {
    LocalDate today = today();
    List<SeasonRepository.Kept> all = seasons.all();
    return all.stream()
        .filter(k -> !k.first().isAfter(today) && !k.last().isBefore(today))
        .findFirst()
        .or(() -> all.stream().filter(k -> k.first().isAfter(today)).reduce((a, b) -> b.first().isBefore(a.first()) ? b : a))
        .or(() -> all.stream().findFirst());
  }

  /** What a season is planned from. */
  public SeasonInput input(long id) {
    return seasons.input(id).orElseThrow(() -> new RefusedException("There is no season with the number " + id + " (any more). Load the page again."));
  }

  /** Whether a season was changed since its newest version was made. */
  boolean changedSince(long id) {
    return seasons.byId(id).filter(SeasonRepository.Kept::changedSince).isPresent();
  }

  /** The newest published plan. */
  public Optional<SeasonPlan> published(long id) {
    return seasons.published(id);
  }

  /** What planning takes from the log. */
  public SeasonWork work() {
    return work.get();
  }

  /** Which day it is. */
  public LocalDate today() {
    return LocalDate.now(clock);
  }

  /** Why a plan cannot be published, each a sentence, what the guard refuses first; empty if it can. */
  public List<String> against(SeasonInput input, SeasonPlan plan) {
    return against(input, plan, done(input));
  }

  /** The same, if this was done before today. */
  List<String> against(SeasonInput input, SeasonPlan plan, Done done) {
    Map<Long, LegCare> cares = work().cares(input, today());
    return PlanCheck.against(input.withBacks(SeasonWork.backs(cares)), plan, done, SeasonWork.holds(cares));
  }

  /** The season with the holds that stand in the program: what is mended and explained from. */
  SeasonInput held(SeasonInput input) {
    return work().held(input, today());
  }

  /**
   * Publishes a plan as the next version.
   *
   * @throws RefusedException if the guard refuses a day of it, a taper is none, somebody trains who is held or not there, or a place is closed
   *     or too full; nothing is published then
   */
  public SeasonPlan publish(long id, SeasonPlan plan) {
    List<String> against = against(input(id), plan);
    if (!against.isEmpty()) {
      throw new RefusedException(refusal(against));
    }
    return seasons.publish(id, plan, clock.instant());
  }

  private static String refusal(List<String> against) {
    String first = String.join("\n", against.subList(0, Math.min(SAID, against.size())));
    String more = against.size() > SAID ? "\nand " + (against.size() - SAID) + " more." : "";
    return "Not published:\n" + first + more + "\nPlan anew, or mend the days.";
  }

  /**
   * Publishes a proposal, and keeps what it was planned from. To be called with nobody else writing in between.
   *
   * @throws RefusedException if something else was published or the season was changed since it was made, and as {@link #publish}
   */
  public SeasonPlan accept(Proposal p) {
    SeasonInput now = input(p.season());
    newestIs(p.season(), p.base());
    if (!now.equals(p.before())) {
      throw new RefusedException("The season was changed since this was proposed. Drop it and make it anew.");
    }
    if (!p.against().isEmpty()) {
      throw new RefusedException(refusal(p.against()));
    }
    if (!p.input().equals(now)) {
      seasons.keep(p.season(), p.input());
    }
    return publish(p.season(), p.plan());
  }

  /** The version that an undo would put back; empty if there is none. */
  public Optional<Integer> before(long id) {
    int n = seasons.byId(id).map(SeasonRepository.Kept::published).orElse(0);
    return n > 1 ? Optional.of(n - 1) : Optional.empty();
  }

  /**
   * Publishes the days from today on of the version before the newest as the next version; days that are over stay as they were. To be
   * called with nobody else writing in between.
   *
   * @param newest the version that is undone
   * @throws RefusedException if there is no version before, if another one was published meanwhile, and as {@link #publish}
   */
  public SeasonPlan undo(long id, int newest) {
    newestIs(id, newest);
    List<Version> all = seasons.versions(id);
    if (all.size() < 2) {
      throw new RefusedException("There is no version before this one to put back.");
    }
    SeasonPlan now = all.get(all.size() - 1).plan();
    SeasonPlan then = all.get(all.size() - 2).plan();
    List<SeasonPlan.Year> years = new ArrayList<>();
    for (SeasonPlan.Year y : now.years()) {
      years.add(then.of(y.athleteId()).map(old -> joined(y, old)).orElse(y));
    }
    return publish(id, new SeasonPlan(now.name(), 0, years));
  }

  private SeasonPlan.Year joined(SeasonPlan.Year now, SeasonPlan.Year then) {
    LocalDate today = today();
    List<PlannedDay> days =
        Stream.concat(
                now.days().stream().filter(d -> d.date().isBefore(today)), then.days().stream().filter(d -> !d.date().isBefore(today)))
            .toList();
    return new SeasonPlan.Year(now.athleteId(), now.athlete(), days, then.climbs(), then.wanted());
  }

  private void newestIs(long id, int version) {
    int newest = seasons.byId(id).map(SeasonRepository.Kept::published).orElse(0);
    if (newest != version) {
      throw new RefusedException("Version " + newest + " was published meanwhile. Look at it first, then do this again if it is still needed.");
    }
  }

  /** What was done before today, by the log. */
  public Done done(SeasonInput input) {
    return work().done(input, today());
  }
}

package boundwright.season.desk;

import boundwright.quantity.RefusedException;
import boundwright.season.Away;
import boundwright.season.Done;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Span;
import boundwright.season.mend.Happened;
import boundwright.season.mend.Mender;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/** Proposes the smallest change that puts a published plan right after something happened. */
public final class MendDesk {
  /** Search of few days for at most so long; then many are chosen anew. */
  private static final long SEARCH_NS = 1_200_000_000L;

  private final SeasonDesk desk;
  private final Proposals proposals;
  private final LongSupplier nanos;

  /** @param nanos a clock that only goes on [ns] */
  public MendDesk(SeasonDesk desk, Proposals proposals, LongSupplier nanos) {
    this.desk = desk;
    this.proposals = proposals;
    this.nanos = nanos;
  }

  /**
   * Somebody's day that was missed, or will be.
   *
   * @param athlete number
   * @param day with a planned session
   */
  public record Missed(long athlete, LocalDate day) {}

  /**
   * Somebody is not there.
   *
   * @param athlete number
   * @param away when and why
   */
  public record Gone(long athlete, Away away) {}

  /**
   * A place is closed.
   *
   * @param venue its key
   * @param day which day
   */
  public record Closed(String venue, LocalDate day) {}

  /** Proposes; what is null did not happen. With nothing at all, what stands against the published plan is mended: the season was changed, somebody is held. */
  public Proposal propose(long season, @Nullable Missed missed, @Nullable Gone gone, @Nullable Closed closed) {
    boolean nothing = missed == null && gone == null && closed == null;
    if (nothing && !desk.changedSince(season) && desk.published(season).filter(p -> !desk.against(desk.input(season), p).isEmpty()).isEmpty()) {
      throw new RefusedException("Nothing to mend was entered. Choose a missed session, who is away, or a closed place.");
    }
    SeasonPlan published = desk.published(season).orElseThrow(() -> new RefusedException("No plan is published yet, so there is nothing to mend. Plan the season first."));
    SeasonInput before = desk.input(season);
    SeasonInput input = before;
    LocalDate today = desk.today();
    Done done = desk.done(input);
    if (closed != null) {
      open(before, closed.day(), today);
      input = Happened.closed(input, closed.venue(), closed.day());
    }
    if (gone != null) {
      Span span = gone.away().span();
      open(before, span.to(), today);
      input = Happened.away(input, member(before, gone.athlete()).id(), gone.away());
    }
    if (missed != null) {
      Member m = member(before, missed.athlete());
      if (published.of(m.id()).flatMap(y -> y.on(missed.day())).isEmpty()) {
        throw new RefusedException(m.name() + " has no planned session on " + missed.day() + ". Choose one from the list.");
      }
      if (missed.day().isBefore(today)) {
        done = done.without(m.id(), missed.day());
      } else {
        input = Happened.away(input, m.id(), new Away(new Span(missed.day(), missed.day()), Away.Why.AWAY));
      }
    }
    long most = nanos.getAsLong() + SEARCH_NS;
    Mender.Mended mended = new Mender(desk.held(input), Happened.climbs(published, input), published, done, () -> nanos.getAsLong() > most).mend();
    List<String> against = desk.against(input, mended.plan(), done);
    Proposal out =
        new Proposal(proposals.number(), season, true, published.version(), before, input, mended.plan(), mended.differences(), Map.of(), against);
    proposals.offer(out);
    return out;
  }

  private static void open(SeasonInput input, LocalDate day, LocalDate today) {
    if (day.isBefore(today) || day.isAfter(input.last())) {
      throw new RefusedException("The day " + day + " cannot be mended: from today, " + today + ", to the end of the season, " + input.last() + ".");
    }
  }

  private static Member member(SeasonInput input, long id) {
    return input.squad().stream().filter(m -> m.id() == id).findFirst().orElseThrow(() -> new RefusedException("That athlete is not in the season (any more). Load the page again."));
  }
}

package boundwright.clip.day;

import boundwright.athlete.Surface;
import boundwright.clip.desk.ClipState;
import boundwright.footfall.Sequence;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A film of a whole session.
 *
 * @param id number in the store, 0 before it is stored
 * @param date day on which it was filmed
 * @param fileName name the file came with
 * @param bytes of the file
 * @param seconds length as far as is known [s]; 0 before the first look
 * @param state how far cutting has come
 * @param reached_s everything that began before was cut [s]
 * @param began when this run of the cutting began, or null
 * @param began_s from where in the film it began [s]
 * @param trouble the sentence with which it was refused, or null
 * @param filmKept whether the film is still there
 * @param done whether the coach is through with it
 * @param sequence asked on the day, or null when it is to be recognised
 * @param approachSteps 0 to 26
 * @param surface what was bounded on
 * @param markToSand_m from the take-off mark to the near edge of the sand [m], or null
 * @param added when it came in
 */
public record SessionFilm(
    long id, LocalDate date, String fileName, long bytes, double seconds, ClipState state, double reached_s, @Nullable Instant began,
    double began_s, @Nullable String trouble, boolean filmKept, boolean done, @Nullable Sequence sequence, int approachSteps, Surface surface,
    @Nullable Double markToSand_m, Instant added) {

  /** Share of the film that was cut, 0 to 1. */
  public double share() {
    return state == ClipState.READ ? 1 : seconds <= 0 ? 0 : Math.min(1, reached_s / seconds);
  }

  /** How long cutting will still take at the pace so far; empty while that cannot be told. */
  public Optional<Duration> remaining(Instant now) {
    Instant from = began;
    double cut = reached_s - began_s;
    if (state != ClipState.READING || from == null || cut < 5 || seconds <= 0) {
      return Optional.empty();
    }
    double pace = Duration.between(from, now).toMillis() / 1000.0 / cut;
    return Optional.of(Duration.ofSeconds(Math.round(Math.max(0, seconds - reached_s) * pace)));
  }
}

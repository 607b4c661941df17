package boundwright.season.ladder;

import boundwright.season.Climb;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * How long an athlete is expected to stay at one approach of a climb, if the stays before it end as planned.
 *
 * @param steps of the approach
 * @param from the first day there in the plan
 * @param spent sessions spent there before
 * @param leastOver first day on which the least stay can be over, or null: not within sight
 * @param expected the mean of the day on which the gate answers <em>add two steps</em>, or null: not within sight
 * @param early about a tenth are ready before this day, or null
 * @param late about nine tenths are ready by this day, or null: not within sight
 * @param pace how many sessions they need
 * @param decision when it is decided, or null: not within the season, or the longest approach
 * @param chanceNext if they are not ready on that day, the chance that they are at the next look, 0 to 1
 */
public record StayForecast(
    int steps,
    LocalDate from,
    int spent,
    @Nullable LocalDate leastOver,
    @Nullable LocalDate expected,
    @Nullable LocalDate early,
    @Nullable LocalDate late,
    Pace pace,
    Climb.@Nullable DecisionDay decision,
    double chanceNext) {}

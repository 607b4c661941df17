/**
 * The season: from meets, holidays, closed days, athletes and their approaches to what each athlete does on each day, why, and what
 * the smallest change is when life happens; and the session by the minute ({@code order}). What is planned from is a
 * {@link boundwright.season.SeasonInput}, what comes out a {@link boundwright.season.SeasonPlan}; every day of it is judged by the guard
 * itself before anybody sees it. The solver is known to {@code season} alone.
 */
@NullMarked
package boundwright.season;

import org.jspecify.annotations.NullMarked;

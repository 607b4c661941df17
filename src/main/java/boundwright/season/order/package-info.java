/**
 * The session by the minute: who runs when, on which lane, where each tape lies and who moves it, who measures and who rests, how near the
 * finish is to the earliest there can be, and what to drop when minutes are lost or a surface closes.
 */
@NullMarked
package boundwright.season.order;

import org.jspecify.annotations.NullMarked;

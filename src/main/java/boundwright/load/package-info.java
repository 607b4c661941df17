/**
 * What an athlete's day asks of each leg: the account ({@code account}), the guard that answers allowed, caution or refused so far
 * today and with the plan, with the limit, the value, the source and its standing, and the room that is left; pain and medical
 * holds; the way back of a leg ({@code back}); session ratings ({@code rating}). Raw jump contacts are judged by the handbooks, standing-bound contacts by the athlete's own
 * weeks only. Nothing here is an injury probability, nothing is called risk, and no meet is refused for its load.
 */
@NullMarked
package boundwright.load;

import org.jspecify.annotations.NullMarked;


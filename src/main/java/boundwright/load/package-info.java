/**
 * Contacts and what they ask of each leg: how many, of which kind, from which rung, on which surface; how hard a contact
 * is on average; and the guard that answers allowed, caution or refused before and during a session, with the limit, the
 * value, the source and its standing. Nothing here is an injury probability, and nothing gates on a ratio of loads.
 */
@NullMarked
package boundwright.load;

import org.jspecify.annotations.NullMarked;


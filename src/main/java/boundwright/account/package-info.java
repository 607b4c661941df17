/**
 * Who may do and see what: accounts, their roles in a club, how they come in, and what is kept of what they did. Knows no page and no
 * athlete but by number.
 */
@NullMarked
package boundwright.account;

import org.jspecify.annotations.NullMarked;

/** What the athlete, the people at home and the club are given to read: plain words, nothing of anybody's health. */
@NullMarked
package boundwright.card.plain;

import org.jspecify.annotations.NullMarked;

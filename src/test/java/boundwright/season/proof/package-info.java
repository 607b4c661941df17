/** The plan of the season beside what CP-SAT finds and proves. */
@NullMarked
package boundwright.season.proof;

import org.jspecify.annotations.NullMarked;

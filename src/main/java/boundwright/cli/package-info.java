/**
 * The command line: reads options, asks the rooms below and writes what they answer, as text for a coach or as JSON
 * for a program. This room answers: how is boundwright asked from a terminal or a script? It does no arithmetic.
 */
@NullMarked
package boundwright.cli;

import org.jspecify.annotations.NullMarked;


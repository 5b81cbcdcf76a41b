/** The field marched along the ground: the wave equation in one vertical plane. The models of other packages do not need it. */
package handreach.propagation.march;

#
# /* comment */
  #  define  A   1
/* */ # /* */ define /* */ B /* */ 2
	#	undef	NOTHING
A B
#pragma something here
#pragma GCC poison nothing_at_all
#ident "x"
end

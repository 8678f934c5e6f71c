%:define X <: 1 :> <% 2 %>
%: define s(x) %:x
%:define cat(a, b) a %:%: b
X s(<:) cat(x, y)
%:if 1
yes
%:endif

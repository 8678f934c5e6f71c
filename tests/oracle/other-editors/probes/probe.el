;; Run in the editor: opens a source, waits for what the server shows, and writes it down.  -*- lexical-binding: t -*-
(require 'json)

(defun probe-wait (what get)
  "The first thing but nil that GET gives; an error that names WHAT when nothing came."
  (let ((end (+ (float-time) 100)) got)
    (while (and (not (setq got (funcall get))) (< (float-time) end))
      (accept-process-output nil 0.2))
    (or got (error "%s never came" what))))

(defun probe ()
  (find-file "main.c")
  ;; Without a window nobody presses a key, behind which the client starts.
  (run-hooks 'post-command-hook)
  (probe-wait "the server" #'eglot-current-server)
  (let (found)
    (push (cons 'diagnostics
                (vconcat
                 (mapcar (lambda (each)
                           `((line . ,(line-number-at-pos (flymake-diagnostic-beg each)))
                             (message . ,(flymake-diagnostic-text each))))
                         (probe-wait "a diagnostic" (lambda () (flymake-start) (flymake-diagnostics))))))
          found)
    (goto-char (point-min))
    (search-forward "51")
    (backward-char)
    (let (hover)
      (push (cons 'hover
                  (probe-wait "a hover"
                              (lambda ()
                                (eglot-hover-eldoc-function (lambda (text &rest _) (setq hover text)))
                                (accept-process-output nil 0.5)
                                (and hover (substring-no-properties hover)))))
            found))
    (push (cons 'actions
                (vconcat
                 (mapcar (lambda (action) (plist-get action :title))
                         (probe-wait "a quick fix" (lambda () (eglot-code-actions (point) (1+ (point))))))))
          found)
    found))

(let ((found (condition-case fault (probe) (error `((error . ,(error-message-string fault)))))))
  (with-temp-file (getenv "EDGEWISE_FOUND") (insert (json-encode found)))
  (kill-emacs))

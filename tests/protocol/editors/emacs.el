;;; emacs.el --- Emacs 28 or newer with eglot as a client -*- lexical-binding: t; -*-
;; Opens the plan, edits it, asks for a hover and a layout, and writes down what it saw.
;; Run by run.mjs with PLAN, SERVER, SEEN, EDIT (line, from, to, text as JSON) and HOVER (line, character) set.

;; Where eglot is a package of the system rather than a part of Emacs.
(dolist (folder (file-expand-wildcards "/usr/share/emacs/site-lisp/elpa/*-[0-9]*"))
  (add-to-list 'load-path folder))
(require 'eglot)
(require 'json)

(define-derived-mode liftplan-mode prog-mode "Becket plan")
(add-to-list 'auto-mode-alist '("\\.liftplan\\'" . liftplan-mode))
(add-to-list 'eglot-server-programs `(liftplan-mode . ("node" ,(getenv "SERVER") "--stdio")))
(setq eglot-sync-connect t
      eglot-connect-timeout 20
      eglot-autoshutdown t
      flymake-no-changes-timeout 0.1)

(defvar becket-published 0 "How often findings have come.")
(advice-add 'eglot-handle-notification :after
            (lambda (_server method &rest _)
              (when (eq method 'textDocument/publishDiagnostics)
                (setq becket-published (1+ becket-published)))))

(defun becket-wait (what done)
  "Wait until DONE gives non-nil; give up on WHAT after 20 seconds."
  (let ((end (+ (float-time) 20)))
    (while (and (not (funcall done)) (< (float-time) end))
      (accept-process-output nil 0.05))
    (unless (funcall done) (error "Waited in vain for %s" what))))

(defun becket-finding (diagnostic)
  "DIAGNOSTIC as the protocol had it, with the place Emacs gave it."
  (let ((sent (alist-get 'eglot-lsp-diag (flymake-diagnostic-data diagnostic)))
        (from (flymake-diagnostic-beg diagnostic)))
    (save-excursion
      (goto-char from)
      (let ((start (line-beginning-position)))
        `((line . ,(1- (line-number-at-pos from)))
          (from . ,(- from start))
          (to . ,(- (flymake-diagnostic-end diagnostic) start))
          (code . ,(plist-get sent :code))
          (source . ,(plist-get sent :source)))))))

(defun becket-findings ()
  "All findings of the buffer, as a vector.
Flymake looks by itself only when Emacs is idle, which it never is in a batch."
  (flymake-start)
  (accept-process-output nil 0.3)
  (vconcat (mapcar #'becket-finding (flymake-diagnostics))))

(defun becket-from-environment (name)
  "What the variable NAME holds as JSON."
  (json-parse-string (getenv name) :object-type 'alist))

(defun becket-goto (line character)
  "Put point at LINE and CHARACTER, both from 0."
  (goto-char (point-min))
  (forward-line line)
  (forward-char character))

(with-current-buffer (find-file-noselect (getenv "PLAN"))
  (call-interactively #'eglot)
  (flymake-mode 1)
  (becket-wait "the first findings" (lambda () (> becket-published 0)))
  (let* ((mode (symbol-name major-mode))
         (before (becket-findings))
         (edit (becket-from-environment "EDIT"))
         (count becket-published)
         (place (becket-from-environment "HOVER"))
         after hover)
    (becket-goto (alist-get 'line edit) (alist-get 'from edit))
    (delete-char (- (alist-get 'to edit) (alist-get 'from edit)))
    (insert (alist-get 'text edit))
    (eglot--signal-textDocument/didChange)
    (becket-wait "the findings after the edit" (lambda () (> becket-published count)))
    (setq after (becket-findings))
    (becket-goto (alist-get 'line place) (alist-get 'character place))
    (setq hover (jsonrpc-request (eglot-current-server) :textDocument/hover (eglot--TextDocumentPositionParams)))
    (eglot-format-buffer)
    (let ((text (buffer-substring-no-properties (point-min) (point-max))))
      (with-temp-file (getenv "SEEN")
        (insert (json-encode `((filetype . ,mode)
                               (before . ,before)
                               (after . ,after)
                               (hover . ,(let ((contents (plist-get hover :contents)))
                                           (if (stringp contents) contents (or (plist-get contents :value) ""))))
                               (text . ,text)))))))
  (set-buffer-modified-p nil)
  (ignore-errors (eglot-shutdown (eglot-current-server)))
  (kill-emacs 0))
